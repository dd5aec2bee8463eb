"""Every source that went out on an earlier day is back.

Why: an open entry is a source nobody has counted back, or a lesson that ended in a hurry. Both are looked
into on the day, not found at the end of the month.

Wrong:
    use-log:
      1:
        {date: 2026-01-14, period: 2, source: N-1, practical: source-bench, room: lab,
         out: "10:05", out by: T1}

Right:
    use-log:
      1:
        {date: 2026-01-15, period: 2, source: N-1, practical: source-bench, room: lab,
         out: "10:05", out by: T1}

Whose: the department's own rule; sources accounted for after use are law in some places.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "use-log-closed"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a source is back in the store, and signed in, on the day it went out")


def check_book(book: Book) -> Iterator[Problem]:
    """Every entry of the use log without a return, of a day that is over."""
    for use in book.uses.values():
        if use.back is None and use.date < book.department.computed_for:
            yield Problem(
                use.at("out"),
                f"{use.source} went out at {use.out:%H:%M} on {use.date} and was never signed in",
                found=f"out by {use.out_by}, for {use.practical} in {use.room}",
                needed="back, with the time and who brought it",
                mend="look whether it is in its place; if not, follow what to do when a source is missing",
                whose=RULE,
            )
