"""Every limit in force has been read again in its source by the day it says.

Why: law moves. A value that was right five years ago still looks right on the page.

Wrong:
    limits:
      electrical.stored-charge: {read_on: 2020-09-01, check_again_by: 2021-09-01}

Right:
    limits:
      electrical.stored-charge: {read_on: 2020-09-01, check_again_by: 2026-01-15}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "limit-reviewed"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a limit is read again in its source by the day it says")


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit in force against the department's day."""
    day = book.department.computed_for
    for limit in book.limits_in_force:
        if limit.check_again_by < day:
            yield Problem(
                limit.at("check_again_by"),
                f"{limit.title}: not read again since {limit.read_on}",
                found=f"to be checked again by {limit.check_again_by}",
                needed=f"a reading on or after {limit.check_again_by}",
                mend=f"read {limit.citation} again, then write the day",
                whose=RULE,
            )
