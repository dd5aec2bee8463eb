"""Dose to skin from the beta particles of a source as the steps run: a number apart from dose to the body."""

from collections.abc import Mapping

from clampstand.calculators.activity_today import activity_today
from clampstand.calculators.emissions import BETA_RULE, beta_branches
from clampstand.calculators.exposures import PEOPLE, Exposure, stays_in_words
from clampstand.calculators.worked import Input, Worked, computed
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.physics.dose import dose
from clampstand.physics.dose_rules import BetaBranch, beta_dose_rate_by_rule, skin_dose_rate_of_betas
from clampstand.units import added_up, digits, number_in, shown_best

RULE = "beta-rule-of-300"
_NOTE = (
    "Beta particles alone, on skin that faces the bare source: H′(0.07). It has a limit of its own and is "
    "never added to the dose of the body. Beyond 1 m it is an upper bound, for air stops more and more of "
    "them. A second published formula gives up to three times as much."
)


def skin_doses(source: Source, stays: Mapping[str, tuple[Exposure, ...]], book: Book) -> tuple[Worked, ...]:
    """Dose to the skin of hand, teacher and watcher; none where no beta particles leave the source.

    Raises:
        CannotWork: the reference figures do not say what is needed.
        OutOfRange: somebody is nearer than the rule holds.
    """
    if "beta" not in source.emits:
        return ()
    return tuple(_dose_to(who, near, source, book) for who, near in stays.items() if near)


def _dose_to(who: str, stays: tuple[Exposure, ...], source: Source, book: Book) -> Worked:
    today, branches = activity_today(source, book), beta_branches(source, book)
    rates = ((skin_dose_rate_of_betas(branches, today.value, stay.distance), stay.time) for stay in stays)
    value = added_up((dose(rate, time) for rate, time in rates), "Sv")
    reach = max(branch.reach for branch in branches)
    return Worked(
        id=f"dose-of-the-lesson/{source.id}/skin-of-{who}",
        title=f"Dose to skin from {source.id} to {PEOPLE[who]} in one lesson",
        value=value,
        kind="skin dose",
        shown=shown_best(value, "skin dose", 2, "up"),
        formula=f"H = Σ Ḋ·t, {beta_dose_rate_by_rule.written}, for the betas that reach so far",
        inputs=(
            computed("activity today, A", today),
            _per_decay(branches),
            Input("rule", "300 rad/h for each curie at one foot", "for 0.5 MeV to 3 MeV", RULE),
            Input("greatest range in air", shown_best(reach, "length", 2), "by Katz and Penfold", BETA_RULE),
            *stays_in_words(stays),
        ),
        day=book.department.computed_for,
        within="a factor of two",
        note=_NOTE,
    )


def _per_decay(branches: tuple[BetaBranch, ...]) -> Input:
    """How many betas a decay gives in all."""
    betas = sum(number_in(branch.per_decay, "1/decay") for branch in branches)
    return Input("beta particles per decay", digits(betas, 3), "reference figures, progeny included")
