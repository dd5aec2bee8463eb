"""Whoever signs for something may do it.

Why: a fault is cleared by somebody who can tell that it is gone; a wipe test by somebody who was shown how. A
signature of anybody else is worth nothing on the day it is asked for.

Wrong:
    faults:
      1: {date: 2026-01-12, thing: T-1, fault: dial loose, by: T1, cleared: 2026-01-13, cleared by: T2}

Right:
    faults:
      1: {date: 2026-01-12, thing: T-1, fault: dial loose, by: T1, cleared: 2026-01-13, cleared by: TEC1}

Whose: the department's own rule; competence for tests is law in many places.
"""

from collections.abc import Iterator

from clampstand.calculators.day import lessons_to_come
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.base import Entry
from clampstand.model.book import Book
from clampstand.model.people import Duty

ID = "may-do-this"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "who may do what is written down, by role code")

_SIGNED: tuple[tuple[str, str, Duty], ...] = (
    ("leak_tests", "by", "test"),
    ("inspections", "by", "test"),
    ("source_counts", "by", "count"),
    ("sign_offs", "by", "sign off"),
    ("faults", "cleared_by", "clear faults"),
)
"""Shelf and column → what whoever is named there must be allowed to do."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every signature, and every teacher of a lesson to come."""
    for shelf, column, duty in _SIGNED:
        for row in book.shelf(shelf).values():
            yield from _may_not(row, column, duty, book)
    for lesson in lessons_to_come(book):
        yield from _may_not(lesson, "teacher", "cover" if lesson.cover else "teach", book)


def _may_not(row: Entry, column: str, duty: Duty, book: Book) -> Iterator[Problem]:
    person = book.people.get(getattr(row, column) or "")
    if person is not None and duty not in person.may:
        yield Problem(
            row.at(column),
            f"{person.id} ({person.role}) may not {duty}",
            found=f"may {', '.join(person.may) or 'do nothing yet'}",
            needed=f"somebody who may {duty}",
            mend="have it done by somebody who may, or enter that this role may",
            whose=RULE,
            related=((person.at("may"), "what this role may do"),),
        )
