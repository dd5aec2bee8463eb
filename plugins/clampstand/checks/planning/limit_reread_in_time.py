"""A limit is to be read again after it was read, and soon enough.

Why: law and guidance change every few years. A limit that is to be read again in ten years will be wrong for
most of them, and nothing says so.

Wrong:
    limits:
      planning.limit-interval: {at_most_interval: 24 months}
      fire.drying-time: {check_again_by: 2036-09-01}

Right:
    limits:
      planning.limit-interval: {at_most_interval: 24 months}
      fire.drying-time: {check_again_by: 2027-09-01}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import the_limit, whose
from clampstand.model.base import Interval
from clampstand.model.book import Book

ID = "limit-reread-in-time"
SEVERITY = Severity.STOP
LIMIT = "planning.limit-interval"
AFTER = Whose(Layer.HANDBOOK, "a limit is read again after it was read")


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit in force: the day of its next reading against that of its last."""
    longest = the_limit(LIMIT, book)
    for limit in book.limits_in_force:
        interval = longest.value if longest is not None else None
        latest = interval.after(limit.read_on) if isinstance(interval, Interval) else limit.check_again_by
        if limit.read_on < limit.check_again_by <= latest:
            continue
        too_late = limit.check_again_by > latest
        yield Problem(
            limit.at("check_again_by"),
            f"{limit.title}: read on {limit.read_on}, to be read again by {limit.check_again_by}",
            found=str(limit.check_again_by),
            needed=f"by {latest}" if too_late else f"after {limit.read_on}",
            mend="look at both days",
            whose=whose(longest) if too_late and longest is not None else AFTER,
        )
