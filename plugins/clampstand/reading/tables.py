"""The tables people keep with a spreadsheet become rows of the book, in the order of their dates."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from clampstand.findings import Finding, Place, Spot
from clampstand.model.base import Entry
from clampstand.model.lesson import TimetabledLesson
from clampstand.model.record import (
    FaultReport,
    Inspection,
    LeakTestDone,
    NearMiss,
    SignOff,
    SourceCount,
    SourceUse,
)
from clampstand.model.second_reading import (
    CertificateReadTwice,
    LimitReadTwice,
    PlateReadTwice,
    RoomMeasuredTwice,
)
from clampstand.reading.findings import MOST_FINDINGS, READING, SCHEMA, listed, stop
from clampstand.reading.grid import Grid, GridRow, nothing_there
from clampstand.reading.schema import define, keys_of
from clampstand.reading.sheet import Sheet

RECORDS: dict[str, type[Entry]] = {
    "leak-tests": LeakTestDone,
    "source-counts": SourceCount,
    "inspections": Inspection,
    "sign-offs": SignOff,
    "use-log": SourceUse,
    "faults": FaultReport,
    "near-misses": NearMiss,
    "limits-read-twice": LimitReadTwice,
    "certificates-read-twice": CertificateReadTwice,
    "rooms-measured-twice": RoomMeasuredTwice,
    "plates-read-twice": PlateReadTwice,
}
"""File of the folder ``records`` → what its rows are."""

RECORDS_FOLDER, TIMETABLE_FOLDER = "records", "timetable"


@dataclass(frozen=True)
class TableRead:
    """What became of one table: its rows, by their ids, and what is wrong with it."""

    rows: dict[str, Entry]
    findings: tuple[Finding, ...]


def kind_of(file: str) -> type[Entry] | None:
    """What the rows of a file are; None where it is no table of the handbook."""
    folder, _, name = file.partition("/")
    if folder == TIMETABLE_FOLDER:
        return TimetabledLesson
    return RECORDS.get(name.removesuffix(".csv")) if folder == RECORDS_FOLDER else None


def read_table(text: str, file: str, kind: type[Entry]) -> TableRead:
    """A CSV file's rows as definitions. Bad content gives findings, never an exception.

    Args:
        text: the file, its lines ended by ``\\n``.
        file: what it is called, from the content folder on.
        kind: what its rows are.
    """
    grid = Grid(text, file, tuple(keys_of(kind)))
    grid.take_apart()
    findings = [finding for _, finding in grid.findings]
    missing = [name for name in required(kind) if name not in grid.header]
    if findings and not grid.rows:
        return TableRead({}, tuple(findings))
    if missing:
        message = f"the column {listed(missing, 'and')} is missing"
        return TableRead({}, (*findings, stop(SCHEMA, Place(file, 1, 1), message, "add it in line 1")))
    rows: dict[str, Entry] = {}
    stem = file.rsplit("/", 1)[1].removesuffix(".csv")
    for row in grid.rows:
        if len(findings) >= MOST_FINDINGS:
            message = "there is too much wrong above: the file is read no further"
            findings.append(stop(READING, Place(file, row.line, 1), message, "mend what is above first"))
            break
        told = list(_empty_cells(row, grid, kind))
        if not told and not any(route[:1] == (row.line,) for route, _ in grid.findings):
            outcome = define(kind, dict(row.cells), _sheet(grid), (row.line,))
            told = [_discreet(finding) for _, finding in outcome.findings]
            if outcome.definition is not None:
                its_id = f"{stem}.{row.line}"
                rows[its_id] = outcome.definition.placed(its_id, Spot(file, (row.line,)))
        findings += told
    return TableRead(rows, tuple(findings))


def in_order_of_date(rows: dict[str, Entry]) -> dict[str, Entry]:
    """Rows by date, then by file and line."""

    def key(row: Any) -> tuple[Any, ...]:
        return row.date, getattr(row, "start", None) or 0, row.spot.file, row.spot.route

    return {row.id: row for row in sorted(rows.values(), key=key)}


def required(kind: type[Entry]) -> Iterator[str]:
    """The columns a table must have."""
    for name, column in kind.model_fields.items():
        if column.is_required():
            yield column.alias or name


def _empty_cells(row: GridRow, grid: Grid, kind: type[Entry]) -> Iterator[Finding]:
    for name in required(kind):
        if name not in row.cells:
            place = nothing_there(grid, row.line, name)
            yield stop(SCHEMA, place, f"{name} is empty in this row", f"write the {name}, or delete the row")


def _sheet(grid: Grid) -> Sheet:
    return Sheet([], tuple(grid.findings), grid.keys, grid.values, grid.lines, grid.file)


def _discreet(finding: Finding) -> Finding:
    """A finding that does not repeat what may be somebody's name."""
    return replace(finding, found="") if "person" in finding.message else finding


def table_sheet(text: str, file: str) -> Sheet:
    """The places of a table's rows and cells."""
    kind = kind_of(file)
    grid = Grid(text, file, tuple(keys_of(kind)) if kind else ())
    grid.take_apart()
    return _sheet(grid)
