"""A dose of one lesson beside what everybody gets anyway, and beside the limit for the public."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from clampstand.calculators.worked import Worked
from clampstand.limits import limits_for, strictest
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.substance import Figure
from clampstand.physics.dose import background_time
from clampstand.units import Quantity, digits, is_under, number_in, q, shown_best

LIMIT, SKIN_LIMIT = "radiation.public-dose", "radiation.public-skin-dose"
_SURROUNDINGS = "surroundings"
_COMPARED = {
    "natural-background": "natural background",
    "all-sources": "all sources together",
}
"""The published dose rates of everybody that a lesson is compared with, and how the page calls them."""
_LEAST = 1e-9


@dataclass(frozen=True, slots=True)
class Comparison:
    """A published dose rate that everybody gets."""

    words: str
    figure: Figure


@dataclass(frozen=True, slots=True)
class InContext:
    """One dose and what it is likened to.

    Args:
        worked: the dose.
        likened: for each comparison, how long it takes to give as much.
        part: which part of the public limit it is, in words; empty where there is no such limit.
    """

    worked: Worked
    likened: tuple[str, ...]
    part: str


@dataclass(frozen=True, slots=True)
class DoseTable:
    """The doses of a practical in context, and what they are compared with.

    Dose to skin is another quantity than dose to the body, with limits of its own: the two never meet.
    """

    rows: tuple[InContext, ...]
    comparisons: tuple[Comparison, ...]
    limits: tuple[Limit, ...]
    skin: tuple[InContext, ...] = ()
    skin_limits: tuple[Limit, ...] = ()


def doses_in_context(numbers: Iterable[Worked], book: Book) -> DoseTable | None:
    """The doses among worked numbers, each in context; None where there is none."""
    known = tuple(numbers)
    doses = [number for number in known if number.kind == "dose"]
    to_skin = [number for number in known if number.kind == "skin dose"]
    if not doses and not to_skin:
        return None
    comparisons = tuple(_comparisons(book)) if doses else ()
    limits = limits_for(LIMIT, book) if doses else ()
    skin_limits = limits_for(SKIN_LIMIT, book) if to_skin else ()
    return DoseTable(
        tuple(_in_context(dose, comparisons, strictest(limits)) for dose in doses),
        comparisons,
        limits,
        tuple(_in_context(dose, (), strictest(skin_limits)) for dose in to_skin),
        skin_limits,
    )


def _comparisons(book: Book) -> Iterator[Comparison]:
    surroundings = book.materials.get(_SURROUNDINGS)
    for name, words in _COMPARED.items():
        if surroundings is not None and name in surroundings.figures:
            yield Comparison(words, surroundings.figures[name])


def _in_context(dose: Worked, comparisons: tuple[Comparison, ...], limit: Limit | None) -> InContext:
    times = (background_time(dose.value, comparison.figure.value.value) for comparison in comparisons)
    amount = limit.amount if limit else None
    part = "" if amount is None else part_of(dose.value, amount.value)
    return InContext(dose, tuple(likened(time) for time in times), part)


def likened(time: Quantity) -> str:
    """A time of natural background in words; nobody is helped by milliseconds."""
    return "less than a second" if is_under(time, q("1 s")) else shown_best(time, "time", 2, "up")


def part_of(dose: Quantity, whole: Quantity) -> str:
    """A small part of a whole in words, rounded towards the greater part.

    >>> part_of(q("21 nSv"), q("1 mSv")), part_of(q("0.5 mSv"), q("1 mSv")), part_of(q("2 mSv"), q("1 mSv"))
    ('one part in 47\u202f000', 'one part in 2', '2 times')
    """
    share = number_in((dose / whole), "")
    if share >= 1:
        return f"{digits(share, 2, 'up').removesuffix('.0')} times"
    if share < _LEAST:
        return "less than one part in a thousand million"
    figures = 2 if share < 0.1 else 1
    return f"one part in {digits(1 / share, figures, 'down')}"
