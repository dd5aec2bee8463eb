"""What the department has undertaken to read twice has been read by a second person.

Why: a certificate, a plate or a law that one person copied may hold a slip that no other value shows. A table
of second readings helps only as far as it goes, and nobody notices a thing that is not in it.

Wrong:
    department: {reads_twice: certificates}
    certificates-read-twice:
      1: {date: 2025-12-01, source: N-1, nuclide: Cs-137, reference date: 2017-10-02, from: CB-1, by: TEC1}
    sources: {N-2: (left out), N-3: (left out), N-5: (left out)}
    source bench: {sources: {1: {one_of: N-1}}}

Right:
    department: {reads_twice: certificates}
    certificates-read-twice:
      1: {date: 2025-12-01, source: N-1, nuclide: Cs-137, reference date: 2017-10-02, from: CB-1, by: TEC1,
          activity: 185 kBq}
    sources: {N-2: (left out), N-3: (left out), N-5: (left out)}
    source bench: {sources: {1: {one_of: N-1}}}

Whose: the department's own rule: it says in reads_twice what it reads twice. Who read a thing first is
written nowhere, so that nobody but they can see to it that the second was somebody else.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.base import Entry
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.second_reading import (
    CertificateReadTwice,
    LimitReadTwice,
    PlateReadTwice,
    RoomMeasuredTwice,
    SecondReading,
)

ID = "read-twice"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.LOCAL, "what matters is read by two people")

_READ: dict[str, tuple[type[SecondReading], tuple[str, ...], str]] = {
    "limits": (LimitReadTwice, ("says",), "limits-read-twice"),
    "certificates": (
        CertificateReadTwice,
        ("nuclide", "activity", "reference_date"),
        "certificates-read-twice",
    ),
    "rooms": (RoomMeasuredTwice, ("level", "volume", "air_changes"), "rooms-measured-twice"),
    "plates": (PlateReadTwice, ("greatest_voltage", "short_circuit_current"), "plates-read-twice"),
}
"""What a department may undertake → the table, the fields that are always read, and the table's name."""


def check_book(book: Book) -> Iterator[Problem]:
    """Everything of the sorts the department reads twice, against its newest second reading."""
    for sort in book.department.reads_twice:
        table, fields, name = _READ[sort]
        for thing in _things(sort, book):
            row = book.second_reading_of(thing)
            read = row.read if row is not None else {}
            there = [field for field in fields if table.first_of(thing, field) is not None]
            missing = [field.replace("_", " ") for field in there if field not in read]
            if missing:
                yield _problem(thing, missing, name)


def _things(sort: str, book: Book) -> Iterator[Entry]:
    if sort == "limits":  # of what nobody has read yet, there is no second reading
        binding = (limit for limit in book.limits_in_force if limit.layer != "local rule")
        yield from (limit for limit in binding if limit.verified == "yes")
    elif sort == "certificates":
        yield from (source for source in book.sources.values() if source.status != "disposed of")
    elif sort == "rooms":
        yield from book.rooms.values()
    else:
        owned = {unit.item for unit in book.supplies.values()}
        yield from (item for item in book.kit.values() if item.id in owned and item.output)


def _problem(thing: Entry, missing: list[str], table: str) -> Problem:
    name = f"{thing.title} ({thing.id})" if isinstance(thing, Limit) else thing.id
    what = "value" if missing == ["says"] else ", ".join(missing)
    return Problem(
        thing.spot,
        f"{name}: {what} was read once only",
        found="no second reading",
        needed=f"a row in the table {table}",
        mend=f"have somebody else read it, without looking here first, and enter it in records/{table}.csv",
        whose=RULE,
    )
