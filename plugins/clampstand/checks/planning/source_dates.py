"""The dates of a source make sense: measured before today, before it left, and left only once it is recorded.

Why: today's activity is worked out from the reference date. A date to come, or one after the source has
left, is a slip, and everything worked out from it is wrong.

Wrong:
    sources:
      N-2: {reference_date: 2026-02-14}

Right:
    sources:
      N-2: {reference_date: 2026-01-15}

Whose: this handbook; records of sources are law in most places.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.department import Source

ID = "source-dates"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "an activity is worked out from a date that has been")


def check_book(book: Book) -> Iterator[Problem]:
    """Every source of the register, on the department's day."""
    today = book.department.computed_for
    for source in book.sources.values():
        days = {"reference_date": source.reference_date, "last_seen": source.last_seen}
        for name, day in days.items():
            if day > today:
                words = name.replace("_", " ")
                yield _problem(source, name, f"its {words} {day} is to come", f"{today} or earlier")
        yield from _disposal(source, book)


def _disposal(source: Source, book: Book) -> Iterator[Problem]:
    gone = source.disposal
    if gone is None:
        if source.status == "disposed of":
            yield _problem(source, "status", "it is disposed of, and nothing says how", "its disposal")
        return
    today = book.department.computed_for
    if source.status != "disposed of":
        message = f"it is {source.status}, and left on {gone.on}"
        yield _problem(source, "status", message, "disposed of")
    if source.reference_date > gone.on:
        message = f"its reference date {source.reference_date} is after it left on {gone.on}"
        yield _problem(source, "reference_date", message, f"{gone.on} or earlier")
    if gone.on > today:
        yield _problem(source, "disposal", f"it leaves on {gone.on}, which is to come", f"{today} or earlier")


def _problem(source: Source, name: str, message: str, needed: str) -> Problem:
    mend = "look at its certificate and correct the register"
    return Problem(source.at(name), f"{source.id}: {message}", message, needed, mend, RULE)
