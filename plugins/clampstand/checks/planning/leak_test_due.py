"""Every source in use has passed its leak test, and the test is not overdue.

Why: a source that leaks puts its activity on hands, forceps and benches. Nobody sees it; only the wipe shows.

Wrong:
    sources:
      N-1: {leak_test: {last: 2024-01-14}}

Right:
    sources:
      N-1: {leak_test: {last: 2024-01-15}}

Whose: law or the conditions of a permit in most places; the interval is guidance or a local rule.
"""

from collections.abc import Iterator

from clampstand.checks.sources import containment, is_in_use
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import the_limit, whose
from clampstand.model.book import Book
from clampstand.model.department import Source

ID = "leak-test-due"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a source in use has passed a leak test within its interval")


def check_book(book: Book) -> Iterator[Problem]:
    """Every source in use; on the day a test runs out it still holds."""
    today = book.department.computed_for
    for source in book.sources.values():
        test = source.leak_test
        if not is_in_use(source):
            continue
        due = test.every.after(test.last)
        if test.result == "fail":
            yield _problem(book, source, "result", f"failed its leak test on {test.last}", "a test passed")
        elif test.last > today:
            yield _problem(book, source, "last", f"has a leak test on {test.last}, to come", f"by {today}")
        elif due < today:
            message = f"has had no leak test since {test.last}; it was due by {due}"
            yield _problem(book, source, "last", message, f"one every {test.every}")


def _problem(book: Book, source: Source, name: str, message: str, needed: str) -> Problem:
    so = {"nuclide": source.nuclide, "form": containment(source)}
    limit = the_limit("radiation.leak-test-interval", book, **so)
    return Problem(
        source.at("leak_test", name),
        f"{source.id} {message}",
        found=f"last {source.leak_test.last}, {source.leak_test.result}, every {source.leak_test.every}",
        needed=needed,
        mend=f"test {source.id} and enter the result, or take it out of use",
        whose=whose(limit) if limit else RULE,
    )
