"""A wipe test that was passed could have seen a leak, and saw none.

Why: an instrument that cannot see the activity that counts as a leak passes every source. A pass is one only
if the least it could see lies below that.

Wrong:
    leak-tests:
      1: {date: 2026-01-12, source: N-1, result: pass, could see: 185 Bq, instrument: scaler, by: TEC1}

Right:
    leak-tests:
      1: {date: 2026-01-12, source: N-1, result: pass, could see: 184 Bq, instrument: scaler, by: TEC1}

Whose: guidance, or the conditions of a permit.
"""

from collections.abc import Iterator

from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, the_limit, whose
from clampstand.model.book import Book

ID = "wipe-saw-enough"
SEVERITY = Severity.STOP
LIMIT = "radiation.leak-test-activity"


def check_book(book: Book) -> Iterator[Problem]:
    """Every test that was passed: what was found on the wipe, and the least that could have been."""
    limit = the_limit(LIMIT, book)
    if limit is None:
        return
    for test in book.leak_tests.values():
        seen = {"found": test.found, "could_see": test.could_see}
        for column, amount in seen.items():
            if test.result == "pass" and amount is not None and not keeps(amount.high, limit):
                what = "found" if column == "found" else "able to see no less than"
                yield Problem(
                    test.at(column),
                    f"the wipe test of {test.source} on {test.date} passed, {what} {amount}",
                    found=str(amount),
                    needed=limit.in_words,
                    mend="enter fail and take the source out of use"
                    if column == "found"
                    else "count the wipe longer or closer, and test again",
                    whose=whose(limit),
                )
