"""Everything worked out for one practical, once, for the rules and the pages alike."""

import datetime as dt
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from clampstand.calculators.clock import Clocked, clock
from clampstand.calculators.kit_totals import KitTotal, kit_totals
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.model.book import Book
from clampstand.model.practical import PHASES, Expectation, Phase, Practical
from clampstand.units import OutOfRange, UnlikeUnits

Calculator: TypeAlias = Callable[[Practical, Book, Mapping[str, str]], tuple[Worked, ...]]
"""Works out numbers for a practical from what ``given`` names. Raises CannotWork with words."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The worked numbers of a practical on the department's day.

    Args:
        numbers: for each ``compute`` entry of ``expect``, in order: what it gave, or why it could not.
        totals: the kit list with its totals.
        clocks: for each phase, its steps with their times.
    """

    day: dt.date
    numbers: tuple[tuple[Expectation, tuple[Worked, ...] | CannotWork], ...]
    totals: tuple[KitTotal, ...]
    clocks: Mapping[Phase, tuple[Clocked, ...]]

    @property
    def told_once(self) -> Iterator[tuple[Expectation, tuple[Worked, ...] | CannotWork]]:
        """The numbers as they are told: what comes beside a number again is told the first time only."""
        told: set[tuple[str, str, str]] = set()
        for entry, result in self.numbers:
            if isinstance(result, CannotWork) or len(result) == 1:
                yield entry, result
                continue
            new = tuple(one for one in result if (one.id, one.title, one.shown) not in told)
            told |= {(one.id, one.title, one.shown) for one in new}
            yield entry, new


def work_out(practical: Practical, book: Book, calculators: Mapping[str, Calculator]) -> Sheet:
    """The sheet of a practical."""
    numbers = tuple(
        (entry, worked_out(entry, practical, book, calculators))
        for entry in practical.expect
        if entry.compute
    )
    clocks = {phase: clock(practical.steps(phase)) for phase in PHASES}
    return Sheet(book.department.computed_for, numbers, kit_totals(practical, book), clocks)


def worked_out(
    entry: Expectation, practical: Practical, book: Book, calculators: Mapping[str, Calculator]
) -> tuple[Worked, ...] | CannotWork:
    """What an expectation's calculator gives, or why it cannot be worked out."""
    calculator = calculators.get(entry.compute or "")
    if calculator is None:
        return CannotWork(f"the handbook has no calculator called {entry.compute}")
    try:
        return calculator(practical, book, entry.given)
    except CannotWork as reason:
        return reason
    except (OutOfRange, UnlikeUnits) as reason:
        return CannotWork(str(reason))
