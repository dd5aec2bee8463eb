"""How much of a short-lived nuclide is left after a time, and how much has grown again."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.decay import activity_after
from clampstand.units import Quantity, digits, joined, number_in, quantity

_ONE = quantity(1, "Bq")


def decay_left(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Part of the activity left after a time: ``given: {nuclide: …, time: …}``."""
    return (_part(practical, book, given, grown=False),)


def grown_again(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Part of its full activity that a nuclide has again, some time after all of it was taken away.

    ``given: {nuclide: …, time: …}``. Holds in a parent that hardly decays meanwhile, as uranium does not.
    """
    return (_part(practical, book, given, grown=True),)


def _part(practical: Practical, book: Book, given: Mapping[str, str], *, grown: bool) -> Worked:
    name = given.get("nuclide", "")
    nuclide = book.nuclides.get(name)
    if nuclide is None:
        raise CannotWork(f"there are no figures for {name or 'no nuclide'}")
    half_life, time = nuclide.half_life.value, number_given(practical, given, "time")
    left: Quantity = stated(activity_after, _ONE, half_life.value, time.value) / _ONE
    value = 1 - left if grown else left
    verb, formula = ("grown again", "1 − 2^(−t/T½)") if grown else ("left", "A/A₀ = 2^(−t/T½)")
    return Worked(
        id=f"{'grown-again' if grown else 'decay-left'}/{name}/{time}",
        title=f"Part of the {nuclide.name} {verb} after {time}",
        value=value.to(""),
        kind="fraction",
        shown=joined(digits(number_in(value, "percent"), 3), "%"),
        formula=formula,
        inputs=(
            written("half-life, T½", half_life, "reference figures", nuclide.half_life.citation),
            Input("time, t", str(time), f"practical, {given['time']}"),
        ),
        within="2 %",
    )
