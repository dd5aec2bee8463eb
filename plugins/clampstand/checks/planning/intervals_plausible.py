"""What must be done again is due within a few years, and no source works for centuries.

Why: years for months is a slip of one word. Nothing is then ever due, and nobody notices until it leaks.

Wrong:
    limits: {planning.longest-interval: {at_most_interval: 5 years}}
    department: {review_every: 12 years}

Right:
    limits: {planning.longest-interval: {at_most_interval: 5 years}}
    department: {review_every: 12 months}

Whose: the department's own bounds, from common practice.
"""

from collections.abc import Iterator
from itertools import chain

from clampstand.findings import Problem, Severity, Spot
from clampstand.limits import the_limit, whose
from clampstand.model.base import Interval
from clampstand.model.book import Book

ID = "intervals-plausible"
SEVERITY = Severity.WARNING
AGAIN = "planning.longest-interval"
WORKS = "planning.longest-working-life"

Written = tuple[str, Interval | None, Spot]
"""What it is of, how long, and where."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every interval of the register, of the department and of the limits that are no bounds themselves."""
    for key, written in ((AGAIN, chain(_of_things(book), _of_limits(book))), (WORKS, _of_lives(book))):
        bound = the_limit(key, book)
        if bound is None or not isinstance(bound.value, Interval):
            continue
        day = book.department.computed_for
        for name, interval, spot in written:
            if interval is not None and interval.after(day) > bound.value.after(day):
                yield Problem(
                    spot,
                    f"{name}: {interval} is longer than anything of the kind",
                    found=str(interval),
                    needed=bound.in_words if key == AGAIN else f"at most {bound.value}",
                    mend="look for years where months were meant, or a figure too many",
                    whose=whose(bound),
                )


def _of_things(book: Book) -> Iterator[Written]:
    for source in book.sources.values():
        yield f"leak test of {source.id}", source.leak_test.every, source.at("leak_test", "every")
    for unit in book.supplies.values():
        yield f"test of {unit.id}", unit.every, unit.at("every")
    for skill in book.skills.values():
        yield f"sign-off for {skill.title}", skill.lasts, skill.at("lasts")
    yield "review of the pages", book.department.review_every, book.department.at("review_every")


def _of_limits(book: Book) -> Iterator[Written]:
    for limit in book.limits_in_force:
        if limit.key not in (AGAIN, WORKS):
            yield limit.title, limit.at_most_interval, limit.at("at_most_interval")


def _of_lives(book: Book) -> Iterator[Written]:
    for source in book.sources.values():
        yield f"working life of {source.id}", source.working_life, source.at("working_life")
