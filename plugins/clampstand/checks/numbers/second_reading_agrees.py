"""What was read twice is the same both times.

Why: nothing else in the handbook can tell a misread certificate, a slip of a prefix in a law or a tape read
at the wrong end. Two people who read the same thing seldom make the same slip.

Wrong:
    certificates-read-twice:
      1: {date: 2025-12-01, source: N-1, activity: 1.85 MBq, from: certificate CB-1, by: TEC1}

Right:
    certificates-read-twice:
      1: {date: 2025-12-01, source: N-1, activity: 5 µCi, from: certificate CB-1, by: TEC1}

Whose: this handbook; to enter what matters twice is common practice wherever records are kept.
"""

from collections.abc import Iterator

from clampstand.checks.readings import is_same, severity_of, shown
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.base import Entry
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.second_reading import LimitReadTwice, SecondReading, thing_read

ID = "second-reading-agrees"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what was read twice is the same both times")


def check_book(book: Book) -> Iterator[Problem]:
    """The newest second reading of everything that was read a second time."""
    for thing in _things(book):
        row = book.second_reading_of(thing)
        if row is not None:
            for field, second in row.read.items():
                if not is_same(row.first_of(thing, field), second):
                    yield _problem(thing, row, field)
    yield from _of_no_limit(book)


def _things(book: Book) -> Iterator[Entry]:
    for pack in book.packs.values():
        yield from pack.limits
    for shelf in (book.sources, book.rooms, book.kit):
        yield from shelf.values()


def _problem(thing: Entry, row: SecondReading, field: str) -> Problem:
    column = type(row).model_fields[field].alias or field
    first, second = (shown(value) for value in (row.first_of(thing, field), getattr(row, field)))
    table = row.spot.file
    return Problem(
        _where(thing, row, field),
        f"{_name(thing)}: {_what(field, column)} {first} here, and {second} in the second reading of "
        f"{row.date}, from {row.read_from}",
        found=first,
        needed=second,
        mend=f"one of the two was misread: look at {row.read_from} again. "
        f"If it was changed on purpose, have it read a second time and add the row to {table}",
        whose=RULE,
        related=((row.at(column), "the second reading"),),
        severity=severity_of(thing, field, row.first_of(thing, field), getattr(row, field)),
    )


def _where(thing: Entry, row: SecondReading, field: str) -> Spot:
    if isinstance(thing, Limit) and field == "says":
        return thing.at(thing.comparator)
    return thing.at(*row.reads[field])


def _what(field: str, column: str) -> str:
    return "it asks for" if field == "says" else f"{column.replace('_', ' ')} is"


def _name(thing: Entry) -> str:
    if isinstance(thing, Limit):
        return f"{thing.title} ({thing.id})"
    return str(getattr(thing, "name", thing.id))


def _of_no_limit(book: Book) -> Iterator[Problem]:
    """Second readings of a limit that its pack does not have: another key, or other circumstances."""
    known = {thing_read(limit) for pack in book.packs.values() for limit in pack.limits}
    for row in book.second_readings.values():
        if isinstance(row, LimitReadTwice) and row.pack in book.packs and row.of not in known:
            limits = [limit for limit in book.packs[row.pack].limits if limit.key == row.key]
            for_what = ", or ".join(limit.applies_to.in_words or "everything" for limit in limits)
            read = row.holds_for or "everything"
            yield Problem(
                row.at("for" if limits and row.holds_for else "key"),
                f"{row.pack} has no limit of {row.key} for {read}, which was read a second time",
                found=read,
                needed=for_what or f"a limit that {row.pack} has",
                mend="one of the two was misread: look again what the limit holds for",
                whose=RULE,
                related=((limits[0].at("applies_to"), "what it holds for here"),) if limits else (),
                severity=Severity.STOP if row.layer == "law" else Severity.WARNING,
            )
