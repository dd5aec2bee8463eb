"""A dangerous supply that is used has been tested, and the test is not overdue.

Why: the limiter that makes a high-voltage supply safe can fail without a sign. Only a measurement shows it.

Wrong:
    supplies:
      T-1: {tested: 2025-01-14}

Right:
    supplies:
      T-1: {tested: 2025-01-15}

Whose: the department's own rule; the duty to maintain equipment is law in many places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import dangerous_supplies
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import the_limit, whose
from clampstand.model.book import Book
from clampstand.model.department import SupplyUnit

ID = "supply-tested"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a supply that can hurt has passed its test")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every dangerous supply of a practical: one of its kind must be fit to be used."""
    for used, _ in dangerous_supplies(lesson):
        owned = lesson.book.units_of(used.id)
        if not any(unit.status == "in use" for unit in owned):
            states = ", ".join(f"{unit.id} {unit.status}" for unit in owned) or "none on the list"
            yield Problem(
                used.spot,
                f"there is no {used.item.name} in use that has been tested",
                found=states,
                needed="one in use, with its test",
                mend="enter its last test among the supplies, or have one repaired and tested",
                whose=RULE,
            )


def check_book(book: Book) -> Iterator[Problem]:
    """Every supply in use; on the day a test runs out it still holds."""
    today = book.department.computed_for
    for unit in book.supplies.values():
        due = unit.every.after(unit.tested)
        if unit.status != "in use":
            continue
        if unit.tested > today:
            yield _problem(book, unit, f"has a test on {unit.tested}, which is to come", f"by {today}")
        elif due < today:
            message = f"has not been tested since {unit.tested}; it was due by {due}"
            yield _problem(book, unit, message, f"one every {unit.every}")


def _problem(book: Book, unit: SupplyUnit, message: str, needed: str) -> Problem:
    limit = the_limit("electrical.test-interval", book)
    return Problem(
        unit.at("tested"),
        f"{unit.id} ({unit.item}) {message}",
        found=f"last {unit.tested}, every {unit.every}",
        needed=needed,
        mend=f"test {unit.id} and enter the date, or take it out of use",
        whose=whose(limit) if limit else RULE,
    )
