"""The interval between two leak tests of a source is no longer than the packs in force allow.

Why: the interval belongs to the place and the permit, not to the source. A page moved from another country
brings the other interval along.

Wrong:
    limits:
      radiation.leak-test-interval: {at_most_interval: 6 months}
    sources:
      N-1: {leak_test: {last: 2025-12-01}}
      N-2: {leak_test: {last: 2025-12-01, every: 6 months}}
      N-5: {leak_test: {last: 2025-12-01, every: 6 months}}

Right:
    sources:
      N-1: {leak_test: {every: 2 years}}

Whose: the law, the guidance or the permit of the place.
"""

from collections.abc import Iterator

from clampstand.checks.sources import containment, is_in_use
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, the_limit, whose
from clampstand.model.base import Interval
from clampstand.model.book import Book

ID = "leak-test-interval"
SEVERITY = Severity.STOP
LIMIT = "radiation.leak-test-interval"


def check_book(book: Book) -> Iterator[Problem]:
    """The interval of every source in use against the shortest in force."""
    for source in book.sources.values():
        limit = the_limit(LIMIT, book, nuclide=source.nuclide, form=containment(source))
        if not is_in_use(source) or limit is None or not isinstance(limit.value, Interval):
            continue
        if not keeps(source.leak_test.every, limit):
            yield Problem(
                source.at("leak_test", "every"),
                f"{source.id} is tested for leaks every {source.leak_test.every}, which is too seldom here",
                found=f"every {source.leak_test.every}",
                needed=limit.in_words,
                mend=f"write every: {limit.value}, and test it if that is over already",
                whose=whose(limit),
            )
