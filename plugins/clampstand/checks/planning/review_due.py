"""Every page is read through again in time.

Why: rooms change, sources decay, people leave, rules are rewritten. A page that nobody has read for two years
describes a department that no longer exists.

Wrong:
    source bench:
      review: {last: 2024-11-20, due: 2025-11-20}

Right:
    source bench:
      review: {last: 2025-04-20, due: 2026-04-20}

Whose: the department's own rule.
"""

import datetime as dt
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import the_limit, whose
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.model.skill import Skill

ID = "review-due"
SEVERITY = Severity.STOP
INTERVAL, GRACE = "planning.review-interval", "planning.review-grace"
RULE = Whose(Layer.LOCAL, "a page is read through again by the day its review says")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The practical's own review."""
    yield from _late(lesson.practical, lesson.book)


def check_book(book: Book) -> Iterator[Problem]:
    """The review of every skill."""
    for skill in book.skills.values():
        yield from _late(skill, book)


def _late(entry: Practical | Skill, book: Book) -> Iterator[Problem]:
    """A warning as long before and after the day as the grace is, then a stop."""
    day, grace = book.department.computed_for, _interval(GRACE, book)
    due = entry.review.due
    longest, limit = _interval(INTERVAL, book), the_limit(INTERVAL, book)
    by_rule = longest is not None and limit is not None and longest.after(entry.review.last) < due
    if by_rule and longest is not None:
        due = longest.after(entry.review.last)
    over = day > (grace.after(due) if grace else due)
    if over or day >= (grace.before(due) if grace else due):
        yield Problem(
            entry.at("review", "last" if by_rule else "due"),
            f"{entry.title}: its review {'was' if day > due else 'is'} due on {due}",
            found=f"last read through on {entry.review.last}, due on {entry.review.due}",
            needed=f"a review by {due}",
            mend="read it through with whoever approves it, then write the new dates",
            whose=whose(limit) if by_rule and limit else RULE,
            severity=_severity(day, due, over=over),
        )


def _severity(day: dt.date, due: dt.date, *, over: bool) -> Severity:
    return Severity.STOP if over and day > due else Severity.WARNING


def _interval(key: str, book: Book) -> Interval | None:
    limit = the_limit(key, book)
    return limit.value if limit is not None and isinstance(limit.value, Interval) else None
