"""Whether the counts a practical wants can be had in the time there is, with its sources as of today."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.calculators.counting_time import counting_time
from clampstand.calculators.given import source_given
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.practical import Practical
from clampstand.units import Quantity, is_over

COUNTING = "counting-time"
AVAILABLE = "available"
"""The word of ``given`` that names the time there is; without it there is the lesson."""


@dataclass(frozen=True, slots=True)
class TooSlow:
    """Counts that take longer than there is time.

    Args:
        entry: the place of the expectation among the others.
        source: what is counted.
        time: the time the counts take today.
        available: the time there is, as written.
    """

    entry: int
    source: Source
    time: Worked
    available: str


def too_slow(practical: Practical, book: Book) -> Iterator[TooSlow]:
    """Every counting time of a practical that is longer than the time there is."""
    for place, entry in enumerate(practical.expect):
        if entry.compute != COUNTING:
            continue
        try:
            (time,) = counting_time(practical, book, entry.given)
            source = source_given(practical, book, entry.given)
        except CannotWork:
            continue  # what cannot be worked out is told by another rule
        longest, written = _time_there_is(practical, entry.given.get(AVAILABLE, ""))
        if is_over(time.value, longest):
            yield TooSlow(place, source, time, written)


def _time_there_is(practical: Practical, name: str) -> tuple[Quantity, str]:
    number = practical.numbers.get(name)
    if number is None:
        return practical.lesson.high, f"the whole lesson, {practical.lesson}"
    return number.value.low, f"{name}, {number.value}"
