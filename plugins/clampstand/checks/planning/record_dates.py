"""A record is of a day that has been.

Why: an entry for a day to come is a slip of the pen or made in advance. Either way nothing rests on it.

Wrong:
    sign-offs:
      13: {like: 10, level: 3, date: 2026-01-16}

Right:
    sign-offs:
      13: {like: 10, level: 3, date: 2026-01-15}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.base import Entry
from clampstand.model.book import Book

ID = "record-dates"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a record is written after the thing was done")

_DATED = {
    "sign_offs": ("date",),
    "uses": ("date",),
    "faults": ("date", "cleared"),
    "near_misses": ("date", "closed"),
    "certificates_read_twice": ("date",),
    "rooms_measured_twice": ("date",),
    "plates_read_twice": ("date",),
}
"""Shelf → the days its rows give. Tests and counts are judged with the source or supply they go into.
Laws are read on days of their own, whatever day the handbook is worked out for."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every day of every record, against the department's day."""
    for shelf, columns in _DATED.items():
        for row in book.shelf(shelf).values():
            for column in columns:
                yield from _to_come(row, column, book)


def _to_come(row: Entry, column: str, book: Book) -> Iterator[Problem]:
    day, today = getattr(row, column), book.department.computed_for
    if day is not None and day > today:
        yield Problem(
            row.at(column),
            f"this record is of {day}, which is to come",
            found=str(day),
            needed=f"{today} or earlier",
            mend="correct the day, or enter it once it is done",
            whose=RULE,
        )
