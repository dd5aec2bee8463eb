"""Every source has been looked for within the interval of the counts.

Why: a source that is missing is found while people still remember who had it, or not at all.

Wrong:
    sources:
      N-1: {last_seen: 2025-12-14}

Right:
    sources:
      N-1: {last_seen: 2025-12-15}

Whose: the department's own rule; accounting for sources is law in most places.
"""

from collections.abc import Iterator

from clampstand.findings import Problem, Severity
from clampstand.limits import the_limit, whose
from clampstand.model.base import Interval
from clampstand.model.book import Book

ID = "counted-monthly"
SEVERITY = Severity.WARNING
LIMIT = "radiation.count-interval"


def check_book(book: Book) -> Iterator[Problem]:
    """Every source that is still here and one count behind; two are for another rule."""
    limit = the_limit(LIMIT, book)
    if limit is None or not isinstance(limit.value, Interval):
        return
    today = book.department.computed_for
    for source in book.sources.values():
        due = limit.value.after(source.last_seen)
        if source.status != "disposed of" and due < today <= limit.value.after(due):
            yield Problem(
                source.at("last_seen"),
                f"{source.id} was last seen on {source.last_seen}; the next count was due by {due}",
                found=f"last seen {source.last_seen}",
                needed=limit.in_words,
                mend="count the store by identity and enter every source",
                whose=whose(limit),
            )
