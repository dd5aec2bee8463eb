"""No source has missed two counts, and none was looked for in vain.

Why: two missed counts are no slip but a source nobody looks after. One that was not there when it was counted
is lost until it is found.

Wrong:
    sources:
      N-1: {last_seen: 2025-11-14}

Right:
    sources:
      N-1: {last_seen: 2026-01-15}

Whose: the department's own rule; accounting for sources and reporting a loss are law in most places.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import the_limit, whose
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.record import SourceCount

ID = "source-lost-sight-of"
SEVERITY = Severity.STOP
LIMIT = "radiation.count-interval"
RULE = Whose(Layer.LOCAL, "every source is where the last count found it")


def check_book(book: Book) -> Iterator[Problem]:
    """Every source that is still here: its newest count, and the day it was last seen."""
    for source in book.sources.values():
        if source.status == "disposed of":
            continue
        newest = max(
            (row for row in book.source_counts.values() if row.source == source.id),
            key=lambda row: (row.date, not row.seen),
            default=None,
        )
        if newest is not None and not newest.seen and newest.date >= source.last_seen:
            yield _not_found(source, newest)
        else:
            yield from _twice(source, book)


def _not_found(source: Source, newest: SourceCount) -> Problem:
    return Problem(
        newest.at("seen"),
        f"{source.id} was not seen in the count of {newest.date}",
        found=f"last seen {source.last_seen}",
        needed=f"seen at {source.position}",
        mend="follow what to do when a source is missing; enter a new count once it is found",
        whose=RULE,
        related=((source.at("position"), "its position in the register"),),
    )


def _twice(source: Source, book: Book) -> Iterator[Problem]:
    limit = the_limit(LIMIT, book)
    if limit is None or not isinstance(limit.value, Interval):
        return
    second = limit.value.after(limit.value.after(source.last_seen))
    if second < book.department.computed_for:
        yield Problem(
            source.at("last_seen"),
            f"{source.id} was last seen on {source.last_seen} and has missed two counts",
            found=f"last seen {source.last_seen}",
            needed=limit.in_words,
            mend="look for it today and enter the count",
            whose=whose(limit),
        )
