"""The interval between two tests of a supply is no longer than the packs in force allow.

Why: an interval that is merely written longer makes every test look in date.

Wrong:
    supplies:
      T-1: {every: 13 months}

Right:
    supplies:
      T-1: {every: 1 year}

Whose: the department's own rule; the duty to maintain equipment is law in many places.
"""

from collections.abc import Iterator

from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, the_limit, whose
from clampstand.model.base import Interval
from clampstand.model.book import Book

ID = "supply-test-interval"
SEVERITY = Severity.STOP
LIMIT = "electrical.test-interval"


def check_book(book: Book) -> Iterator[Problem]:
    """The interval of every supply in use against the shortest in force."""
    limit = the_limit(LIMIT, book)
    if limit is None or not isinstance(limit.value, Interval):
        return
    for unit in book.supplies.values():
        if unit.status == "in use" and not keeps(unit.every, limit):
            yield Problem(
                unit.at("every"),
                f"{unit.id} ({unit.item}) is tested every {unit.every}, which is too seldom here",
                found=f"every {unit.every}",
                needed=limit.in_words,
                mend=f"write every: {limit.value}, and test it if that is over already",
                whose=whose(limit),
            )
