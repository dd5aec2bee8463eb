"""One CSV file as rows of cells, each with its line and column; what spreadsheets do to a file is told."""

import csv
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from clampstand.findings import Finding, Place, Route
from clampstand.reading.findings import MOST_FINDINGS, READING, listed, near, shown, stop
from clampstand.reading.walk import INVISIBLE, Stretch, place_of

MOST_ROWS = 5000
MOST_CELLS = 60
"""Cells of one row. The widest table of the handbook has fifteen columns."""
LONGEST_ROW = 4000
"""Characters. A remark has 300 at most."""
DELIMITERS = (",", ";", "\t")

_NO_CSV = "save it again as CSV in UTF-8"


@dataclass(slots=True)
class _Point:
    """A point of the text, counted from 0."""

    line: int
    column: int


@dataclass(frozen=True, slots=True)
class GridRow:
    """One row: its line, counted from 1, and what is in each column; empty cells are left out."""

    line: int
    cells: Mapping[str, str]


@dataclass
class Grid:
    """A CSV file taken apart.

    Args:
        text: the file, its lines ended by ``\\n``.
        file: what it is called in places.
        columns: the columns there may be.
    """

    text: str
    file: str
    columns: tuple[str, ...]
    rows: list[GridRow] = field(default_factory=list)
    findings: list[tuple[Route, Finding]] = field(default_factory=list)
    keys: dict[Route, Stretch] = field(default_factory=dict)
    values: dict[Route, Stretch] = field(default_factory=dict)
    """Line, or line and column → the stretch of the row or cell."""
    header: tuple[str, ...] = ()
    """The columns there are, as the handbook calls them; an unknown one is an empty text."""

    def __post_init__(self) -> None:
        self.lines = self.text.split("\n")
        self._delimiter = ","
        self._met: dict[tuple[tuple[str, str], ...], int] = {}

    def take_apart(self) -> None:
        """Read the header and every row. Never raises, whatever is in the file."""
        if match := INVISIBLE.search(self.text):
            self._stop_at(match.start(), match.group())
            return
        first = next((n for n, line in enumerate(self.lines) if not _is_blank(line)), None)
        if first is None:
            self._tell((), self._whole(0), "this file is empty", "write the names of the columns in line 1")
            return
        self._delimiter = delimiter_of(self.lines[first], self.columns)
        if not self._read_header(first):
            return
        for number in range(first + 1, len(self.lines)):
            if len(self.findings) >= MOST_FINDINGS:
                message = "there is too much wrong above: the file is read no further"
                self._tell((), self._whole(number), message, "mend what is above first")
                return
            if not _is_blank(self.lines[number]) and not self._read_row(number):
                return

    def _stop_at(self, index: int, sign: str) -> None:
        before = self.text[:index]
        point = _Point(before.count("\n"), index - before.rfind("\n") - 1)
        message = f"there is an invisible character here (U+{ord(sign):04X})"
        self._tell((), (point, _Point(point.line, point.column + 1)), message, f"delete it, or {_NO_CSV}")

    def _tell(self, route: Route, at: Stretch, message: str, mend: str, found: str = "") -> None:
        place = place_of(*at, self.lines, self.file)
        self.findings.append((route, stop(READING, place, message, mend, found)))

    def _whole(self, number: int) -> Stretch:
        return _Point(number, 0), _Point(number, max(len(self.lines[number]), 1))

    def _cells(self, number: int) -> list[tuple[str, Stretch]] | None:
        """The cells of one line with their stretches; None, and a finding, where it cannot be taken apart."""
        line = self.lines[number]
        try:
            if len(line) > LONGEST_ROW:
                raise csv.Error
            texts = next(csv.reader([line], delimiter=self._delimiter, strict=True))
        except (csv.Error, StopIteration):
            message = (
                "this row cannot be taken apart: a quotation mark is not closed, or a cell has two lines"
            )
            self._tell(
                (), self._whole(number), message, "keep each cell on one line, without quotation marks"
            )
            return None
        spans = [match.span(1) for match in _CELL[self._delimiter].finditer(line)]
        ends = [(_Point(number, a), _Point(number, b)) for a, b in spans]
        return list(zip((text.strip() for text in texts), ends, strict=False))

    def _read_header(self, number: int) -> bool:
        """The columns, from the first line; whether the rows are worth reading."""
        cells = self._cells(number)
        if cells is None:
            return False
        names: list[str] = []
        for text, at in cells[:MOST_CELLS]:
            name = column_meant(text, self.columns)
            if text and not name:
                free = [c for c in self.columns if c not in names]
                meant = near(text, free)
                mend = (
                    f"did you mean {meant}?"
                    if meant
                    else f"the columns are {listed(self.columns, 'and', 20)}"
                )
                self._tell((), at, f"{shown(text)} is not a column of this table", mend)
            elif name in names and name:
                self._tell((), at, f"the column {name} is there twice", "keep one of the two")
            else:
                self.keys[(name,)] = at
            names.append(name)
        self.header = tuple(names)
        return not self.findings

    def _read_row(self, number: int) -> bool:
        """One row; whether the next is worth reading."""
        if len(self.rows) >= MOST_ROWS:
            message = f"this table has more than {MOST_ROWS} rows"
            self._tell((), self._whole(number), message, "move old rows into the archive")
            return False
        cells = self._cells(number)
        if cells is None:
            return False
        if not any(text for text, _ in cells):
            return True
        line = number + 1
        self.values[(line,)] = self._whole(number)
        surplus = [(text, at) for text, at in cells[len(self.header) :] if text]
        if surplus:
            message = "this row has more cells than there are columns"
            self._tell((line,), surplus[0][1], message, "put a text that has a comma in double quotes")
        elif len(cells) < len(self.header):
            message = f"this row has {len(cells)} cells and the table has {len(self.header)} columns"
            self._tell((line,), self._whole(number), message, "fill the row up with empty cells")
        else:
            self._keep(line, cells)
        return True

    def _keep(self, line: int, cells: list[tuple[str, Stretch]]) -> None:
        row: dict[str, str] = {}
        for name, (text, at) in zip(self.header, cells, strict=False):
            if not name and text:
                self._tell(
                    (line,), at, "this cell is in a column without a name", "name the column in line 1"
                )
            elif name:
                self.values[(line, name)] = self.values[(line, name.replace(" ", "_"))] = at
                self._look_at(line, name, text, at)
                row |= {name: text} if text else {}
        told = tuple(sorted(row.items()))
        if told in self._met:
            message = f"this row is the same as the one in line {self._met[told]}"
            self._tell((line,), self._whole(line - 1), message, "keep one of the two")
        self._met.setdefault(told, line)
        self.rows.append(GridRow(line, row))

    def _look_at(self, line: int, name: str, text: str, at: Stretch) -> None:
        """Refuse what a spreadsheet computes: whoever opens the file next would run it."""
        if text[:1] in ("=", "+", "@") or re.match(r"[-−](?!\s)", text):
            message, mend = (
                "this cell begins like a formula",
                "write the value itself, or leave the cell empty",
            )
            self._tell((line, name), at, message, mend, text)
        elif re.match(r"#+(?:[A-Z0-9/]+[!?]?)?$", text):
            self._tell((line, name), at, "this is a spreadsheet's sign for an error", "write the value", text)


_CELL = {
    mark: re.compile(
        rf'(?:^|(?<={re.escape(mark)}))("(?:[^"]|"")*"|[^{re.escape(mark)}]*)(?={re.escape(mark)}|$)'
    )
    for mark in DELIMITERS
}


def _is_blank(line: str) -> bool:
    """Whether a line has nothing but what separates cells, as the empty rows spreadsheets save."""
    return not line.strip(' \t,;"\u00a0')


def column_meant(text: str, columns: Iterable[str]) -> str:
    """The column a heading is the name of: capitals, underlines and spaces at the ends mean nothing.

    >>> column_meant(" Class_Size ", ["class size"])
    'class size'
    """
    plain = " ".join(text.replace("_", " ").split()).casefold()
    return next((column for column in columns if column == plain), "")


def delimiter_of(header: str, columns: Iterable[str]) -> str:
    """What separates the cells: the sign that takes the most known columns out of the first line.

    >>> delimiter_of("date;source;result", ["date", "source", "result"])
    ';'
    """
    known = tuple(columns)

    def columns_found(mark: str) -> int:
        return sum(bool(column_meant(text.strip('"'), known)) for text in header[:LONGEST_ROW].split(mark))

    return max(DELIMITERS, key=columns_found)


def nothing_there(grid: Grid, line: int, column: str) -> Place:
    """The place of an empty cell."""
    return place_of(*grid.values[(line, column)], grid.lines, grid.file)
