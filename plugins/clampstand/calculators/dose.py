"""Dose from a source: its rate at a distance, and what hand, teacher and watcher get as the steps run."""

from collections.abc import Mapping
from dataclasses import dataclass

from clampstand.calculators.activity_today import activity_today, nuclide_of
from clampstand.calculators.dose_context import likened
from clampstand.calculators.emissions import photon_lines
from clampstand.calculators.exposures import PEOPLE, Exposure, exposures, stays_in_words
from clampstand.calculators.given import number_given, source_given
from clampstand.calculators.remembered import once_a_book
from clampstand.calculators.skin_dose import skin_doses
from clampstand.calculators.worked import CannotWork, Input, Worked, computed, written
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.practical import Practical
from clampstand.physics.dose import ambient_dose_rate, ambient_dose_rate_constant, background_time
from clampstand.physics.dose import dose as dose_of
from clampstand.units import Amount, Quantity, added_up, digits, joined, number_in, q, shown_best

PHOTON_CUTOFF = q("20 keV")
"""Softer photons hardly leave a capsule; the cut-off is part of every dose-rate constant and is printed."""
COEFFICIENTS = "ambient-dose.per-fluence"
_CONSTANT_UNIT = "µSv m²/(GBq h)"


@dataclass(frozen=True, slots=True)
class Emitter:
    """A source as a dose rate sees it today.

    Args:
        source: the source of the register.
        constant: ambient dose-equivalent rate constant, photons of at least :data:`PHOTON_CUTOFF`, bare.
        activity: its activity today.
        inputs: both, with where they came from.
        gives_betas: whether beta particles come on top.
    """

    source: Source
    constant: Quantity
    activity: Quantity
    inputs: tuple[Input, ...]
    gives_betas: bool

    @property
    def counts(self) -> str:
        """What its dose counts, in words: the betas of a source are never in it."""
        return "; beta particles not counted" if self.gives_betas else ""

    def rate_at(self, distance: Quantity) -> Quantity:
        """Its ambient dose-equivalent rate at a distance."""
        return ambient_dose_rate(self.constant, self.activity, distance)


@once_a_book
def emitter(source: Source, book: Book) -> Emitter:
    """A source with its activity today and its dose-rate constant. Raises CannotWork without figures."""
    table = book.coefficients.get(COEFFICIENTS)
    if table is None:
        raise CannotWork(f"the reference figures have no table {COEFFICIENTS}")
    today = activity_today(source, book)
    constant = ambient_dose_rate_constant(photon_lines(source, book), table.curve, PHOTON_CUTOFF)
    if constant.magnitude == 0:
        raise CannotWork(f"{source.nuclide} gives no gamma or X-rays to speak of, and only these are counted")
    emissions = nuclide_of(source, book).emissions.gamma or nuclide_of(source, book).emissions.x
    inside = (source.nuclide, *source.in_equilibrium_with)
    gives_betas = any(book.nuclides[name].emitted("beta") for name in inside if name in book.nuclides)
    inputs = (
        computed("activity today, A", today),
        Input(
            "dose-rate constant, k",
            joined(digits(number_in(constant, "uSv*m**2/(GBq*h)"), 3), _CONSTANT_UNIT),
            f"emissions of {', '.join(inside)}; H*(10), photons from 20 keV",
            emissions.citation if emissions else "",
        ),
        Input("dose per photon fluence", "table", "reference figures", table.citation),
    )
    return Emitter(source, constant, today.value, inputs, gives_betas)


_ALPHA_BETA_NOTE = (
    "Gamma and X-rays only, from the bare source. Alpha particles do not reach that far. Beta particles, "
    "where the source gives them, come on top: in front of its window skin gets far more from them."
)
_BETAS_APART = "; beta particles apart, as dose to skin"


def dose_rate_at(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Ambient dose-equivalent rate at a declared distance: ``given: {source: …, distance: …}``."""
    source = source_given(practical, book, given)
    distance = number_given(practical, given, "distance")
    known = emitter(source, book)
    value = known.rate_at(distance.low)
    return (
        Worked(
            id=f"dose-rate-at/{source.id}/{distance}",
            title=f"Dose rate {distance} from {source.id} today",
            value=value,
            kind="dose rate",
            shown=shown_best(value, "dose rate", 2, "up"),
            formula=ambient_dose_rate.written,
            inputs=(
                *known.inputs,
                Input("distance, d", str(distance), f"practical, {given['distance']}"),
            ),
            day=book.department.computed_for,
            within=f"20 %{known.counts}",
            note=_ALPHA_BETA_NOTE,
        ),
    )


def dose_of_the_lesson(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Dose to hand, teacher and watcher in one run, beside natural background: ``given: {source: …}``.

    Gamma and X-rays for the body; apart from it, beta particles for the skin.
    """
    source = source_given(practical, book, given)
    slot = given.get("source", "source")
    stays = {who: exposures(practical, slot, who, book) for who in PEOPLE}
    if not any(stays.values()):
        raise CannotWork(f"no step takes {slot} out of its box with a distance named")
    skin = skin_doses(source, stays, book)
    if skin and not photon_lines(source, book):
        return skin
    known = emitter(source, book)
    return (*(_dose_to(who, near, known, book) for who, near in stays.items() if near), *skin)


def _dose_to(who: str, stays: tuple[Exposure, ...], known: Emitter, book: Book) -> Worked:
    value = added_up((dose_of(known.rate_at(stay.distance), stay.time) for stay in stays), "Sv")
    background, background_citation = background_of(book)
    likened_to = likened(background_time(value, background.value))
    return Worked(
        id=f"dose-of-the-lesson/{known.source.id}/{who}",
        title=f"Dose from {known.source.id} to {PEOPLE[who]} in one lesson",
        value=value,
        kind="dose",
        shown=shown_best(value, "dose", 2, "up"),
        formula="H = Σ k·A·t/d²",
        inputs=(
            *known.inputs,
            *stays_in_words(stays),
            written("natural background", background, "reference figures", background_citation),
        ),
        day=book.department.computed_for,
        within=f"a factor of two{_BETAS_APART if 'beta' in known.source.emits else known.counts}",
        note="Computed for gamma and X-rays, small, not zero: as much as natural background gives in "
        f"{likened_to}. {_ALPHA_BETA_NOTE}",
    )


def background_of(book: Book) -> tuple[Amount, str]:
    """Natural background as a dose rate, with its citation."""
    surroundings = book.materials.get("surroundings")
    if surroundings is None or "natural-background" not in surroundings.figures:
        raise CannotWork("the reference figures have no natural background")
    figure = surroundings.figures["natural-background"]
    return figure.value, figure.citation
