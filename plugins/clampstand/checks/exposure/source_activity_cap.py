"""No source of the register is stronger than the department may keep.

Why: what a source may do, where it may be kept and who may use it were all decided for a certain activity.
A stronger one is outside every approval, and a slip of a prefix makes it a thousand times as strong.

Wrong:
    sources:
      N-1: {activity: 3.7 MBq}

Right:
    sources:
      N-1: {activity: 10 µCi}

Whose: the department's own rule, or the permit the sources are kept under.
"""

from collections.abc import Iterator

from clampstand.checks.sources import containment
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, the_limit, whose
from clampstand.model.book import Book

ID = "source-activity-cap"
SEVERITY = Severity.STOP
LIMIT = "radiation.source-activity"


def check_book(book: Book) -> Iterator[Problem]:
    """Every source that has not left, at the activity of its certificate."""
    for source in book.sources.values():
        limit = the_limit(LIMIT, book, nuclide=source.nuclide, form=containment(source))
        left = source.status == "disposed of"
        if left or limit is None or limit.amount is None or keeps(source.activity.high, limit):
            continue
        yield Problem(
            source.at("activity"),
            f"{source.id}: {source.activity} of {source.nuclide} is more than one source may have",
            found=str(source.activity),
            needed=limit.in_words,
            mend="compare unit and prefix with the certificate; if they are right, ask the radiation adviser",
            whose=whose(limit),
        )
