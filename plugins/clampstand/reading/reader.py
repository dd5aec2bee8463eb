"""A folder becomes a book: which files hold which definitions, and what is left out of it and why."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import TypeVar

from clampstand.findings import Finding, Place, Route, Spot, in_order
from clampstand.model.base import Definition, Entry
from clampstand.model.book import Book
from clampstand.model.citation import Citation
from clampstand.model.coefficients import CoefficientTable
from clampstand.model.department import Contact, Department, Room, Source, SupplyUnit
from clampstand.model.emergency import Emergency
from clampstand.model.hazard import Hazard
from clampstand.model.kit import Item
from clampstand.model.limit import Pack
from clampstand.model.material import Material
from clampstand.model.nuclide import Nuclide
from clampstand.model.people import CODE, NOT_PERSONAL, Person
from clampstand.model.practical import Practical
from clampstand.model.skill import Skill
from clampstand.model.substance import Substance
from clampstand.model.term import Term
from clampstand.reading.files import Shelves, gather
from clampstand.reading.findings import MOST_FINDINGS, READING, SCHEMA, shown, stop
from clampstand.reading.newest import with_the_newest
from clampstand.reading.places import Places, read_sheet
from clampstand.reading.references import unknown_ids
from clampstand.reading.schema import Outcome, define
from clampstand.reading.sheet import Sheet
from clampstand.reading.tables import (
    RECORDS,
    RECORDS_FOLDER,
    TIMETABLE_FOLDER,
    in_order_of_date,
    kind_of,
    read_table,
)
from clampstand.reading.walk import Plain

FILE_EACH: dict[str, type[Entry]] = {"practicals": Practical, "skills": Skill, "emergencies": Emergency}
"""Folder → what each of its files is; the name of the file is the id."""

MANY_A_FILE: dict[str, type[Entry]] = {
    "kit": Item,
    "hazards": Hazard,
    "citations": Citation,
    "glossary": Term,
}
"""Folder → what its files hold by id. How the entries are spread over files means nothing."""

DEPARTMENT_FILE = "department/department.yml"
OF_THE_DEPARTMENT: dict[str, type[Entry]] = {
    "department/contacts.yml": Contact,
    "department/people.yml": Person,
    "department/rooms.yml": Room,
    "department/sources.yml": Source,
    "department/supplies.yml": SupplyUnit,
}
REFERENCE: dict[str, type[Entry]] = {
    "reference/nuclides.yml": Nuclide,
    "reference/coefficients.yml": CoefficientTable,
    "reference/materials.yml": Material,
    "reference/substances.yml": Substance,
}
"""File → what it holds by id."""

PACKS = "limits"
_FOLDERS: dict[str, tuple[str, ...]] = {
    "department": ("department", "contacts", "people", "rooms", "sources", "supplies"),
    **dict.fromkeys((*FILE_EACH, *MANY_A_FILE, PACKS), ()),
    "reference": tuple(file.split("/")[1].removesuffix(".yml") for file in REFERENCE),
    RECORDS_FOLDER: tuple(RECORDS),
    TIMETABLE_FOLDER: (),
}
"""Folder → the only files it may hold; none named means any."""

_E = TypeVar("_E", bound=Definition)

_ID_LINE = re.compile(r"^([A-Za-z][A-Za-z0-9.-]{0,79}):", re.MULTILINE)
_PACK_LINE = re.compile(r"^pack: *([A-Za-z][A-Za-z0-9.-]{0,79})", re.MULTILINE)
_LIMIT_LINE = re.compile(r"\bkey: *([A-Za-z][A-Za-z0-9.-]{0,79})")


@dataclass(frozen=True)
class Reading:
    """What was read.

    Args:
        book: every definition that is whole; None when not even the department is.
        places: turns the spots of definitions into lines and columns.
        findings: what is wrong, in order.
        texts: file, named from the content folder on → its text.
        broken: shelf and id of what is written but not whole. It is not in the book, and a reference to it
            is no mistake.
    """

    book: Book | None
    places: Places
    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    broken: frozenset[tuple[str, str]]

    @property
    def files(self) -> tuple[str, ...]:
        """The files that were read, in order."""
        return tuple(sorted(self.texts))

    @cached_property
    def lines(self) -> Mapping[str, Sequence[str]]:
        """The lines of each file, for showing the text a finding is about."""
        return {file: text.split("\n") for file, text in self.texts.items()}


def read(folder: Path) -> Reading:
    """Read a content folder. Bad content gives findings, never an exception.

    Args:
        folder: the folder that holds ``department``, ``practicals`` and the others.

    Raises:
        NotADirectoryError: there is no such folder.
    """
    shelves = gather(folder, _FOLDERS)
    desk = _Desk(shelves, list(shelves.findings))
    desk.read_all()
    places = Places(shelves.texts)
    broken = frozenset(desk.broken)
    book = desk.book()
    if book is not None:
        desk.findings += unknown_ids(book, broken, places)
        book = with_the_newest(book)
    return Reading(book, places, tuple(in_order(desk.findings)), dict(shelves.texts), broken)


@dataclass
class _Desk:
    """The work of reading one folder: what is whole so far, and what is not."""

    shelves: Shelves
    findings: list[Finding]
    entries: dict[str, dict[str, Entry]] = field(default_factory=dict)
    """Shelf → id → definition."""
    broken: set[tuple[str, str]] = field(default_factory=set)
    department: Department | None = None
    first: dict[tuple[str, str], Place] = field(default_factory=dict)
    """Shelf and id → where it was first written."""

    def read_all(self) -> None:
        """Every file of every folder, in order."""
        self._read_department()
        for folder, kind in FILE_EACH.items():
            for its_id, file in self.shelves.of(folder):
                self._read_single(kind, its_id, file)
        for folder, kind in MANY_A_FILE.items():
            for _, file in self.shelves.of(folder):
                self._read_many(kind, file)
        for files in (OF_THE_DEPARTMENT, REFERENCE):
            for file, kind in files.items():
                self._read_many(kind, file)
        for _, file in self.shelves.of(PACKS):
            self._read_pack(file)
        for folder in (RECORDS_FOLDER, TIMETABLE_FOLDER):
            for _, file in self.shelves.of(folder):
                self._read_rows(file)

    def book(self) -> Book | None:
        """The whole definitions as a book."""
        if self.department is None:
            return None
        return Book(self.department, **self.entries)  # type: ignore[arg-type]

    def _sheet(self, file: str) -> Sheet | None:
        """A file's data; its findings are noted. None where the file is no text or is not there."""
        if file not in self.shelves.texts:
            return None
        sheet = read_sheet(self.shelves.texts[file], file)
        self.findings += [finding for _, finding in sheet.findings]
        return sheet

    def _read_department(self) -> None:
        sheet = self._sheet(DEPARTMENT_FILE)
        if sheet is None:
            if DEPARTMENT_FILE not in self.shelves.broken:
                place = Place(DEPARTMENT_FILE, 1, 1)
                self.findings.append(stop(READING, place, "there is no such file", "write it"))
            return
        made = self._define(Department, sheet, sheet.data, (), "department")
        self.department = made.placed("department", Spot(DEPARTMENT_FILE)) if made else None

    def _read_single(self, kind: type[Entry], its_id: str, file: str) -> None:
        sheet = self._sheet(file)
        made = self._define(kind, sheet, sheet.data, (), f"{kind.shelf}/{its_id}") if sheet else None
        self._keep(kind.shelf, its_id, made, Spot(file))

    def _read_many(self, kind: type[Entry], file: str) -> None:
        sheet = self._sheet(file)
        if sheet is None or sheet.data is None:
            self._salvage(kind.shelf, file)
            return
        if not isinstance(sheet.data, dict):
            mend = "begin each line with an id and a colon"
            self.findings.append(stop(SCHEMA, Place(file, 1, 1), "a block of ids belongs here", mend))
            return
        before = len(self.findings)
        for its_id, data in sheet.data.items():
            if len(self.findings) - before >= MOST_FINDINGS:
                message = "there is too much wrong above: from here on the file is not looked at"
                place = sheet.place((its_id,), at_key=True)
                self.findings.append(stop(SCHEMA, place, message, "mend what is above first"))
                self._salvage(kind.shelf, file)
                return
            if not _ID_LINE.fullmatch(f"{its_id}:"):
                message = f"{shown(its_id) or 'nothing'} is not an id"
                mend = "use letters, digits, hyphens and dots, a letter first"
                self.findings.append(stop(SCHEMA, sheet.place((its_id,), at_key=True), message, mend))
            elif kind is Person and not CODE.fullmatch(its_id):
                place = sheet.place((its_id,), at_key=True)
                self.findings.append(stop(SCHEMA, place, "this is not a role code", NOT_PERSONAL))
            elif self._is_new(kind.shelf, its_id, sheet.place((its_id,), at_key=True)):
                made = self._define(kind, sheet, data, (its_id,), f"{kind.shelf}/{its_id}")
                self._keep(kind.shelf, its_id, made, Spot(file, (its_id,)))

    def _read_pack(self, file: str) -> None:
        sheet = self._sheet(file)
        made = self._define(Pack, sheet, sheet.data, (), "packs") if sheet else None
        if made is None:
            self._salvage_pack(file)
        elif sheet and self._is_new(Pack.shelf, made.pack, sheet.place(("pack",))):
            self._keep(Pack.shelf, made.pack, made, Spot(file))
            _place_limits(made, file)

    def _read_rows(self, file: str) -> None:
        kind = kind_of(file)
        if kind is None or file not in self.shelves.texts:
            return
        table = read_table(self.shelves.texts[file], file, kind)
        self.findings += table.findings
        self.entries[kind.shelf] = in_order_of_date({**self.entries.get(kind.shelf, {}), **table.rows})

    def _is_new(self, shelf: str, its_id: str, place: Place) -> bool:
        """Whether an id is met for the first time; the second time is a stop that names the first."""
        first = self.first.setdefault((shelf, its_id), place)
        if first is place:
            return True
        message = f"{its_id} is written in {first.file} already, in line {first.line}"
        finding = stop(READING, place, message, "keep one of the two")
        self.findings.append(replace(finding, related=((first, "first written here"),)))
        return False

    def _define(
        self, kind: type[_E], sheet: Sheet, data: "Plain | None", at: Route, subject: str
    ) -> _E | None:
        """A definition, if data and file are without a stop there; its findings are noted."""
        if sheet.data is None:
            return None
        outcome: Outcome[_E] = define(kind, data, sheet, at)
        self.findings += [replace(finding, subject=subject) for _, finding in outcome.findings]
        unreadable = any(finding.stops and route[: len(at)] == at for route, finding in sheet.findings)
        return None if unreadable else outcome.definition

    def _keep(self, shelf: str, its_id: str, made: Entry | None, spot: Spot) -> None:
        if made is None:
            self.broken.add((shelf, its_id))
        else:
            self.entries.setdefault(shelf, {})[its_id] = made.placed(its_id, spot)

    def _salvage(self, shelf: str, file: str) -> None:
        """The ids in a file that cannot be read, so that nobody is told they do not exist."""
        self.broken |= {(shelf, its_id) for its_id in self._ids(_ID_LINE, file)}

    def _salvage_pack(self, file: str) -> None:
        self.broken |= {(Pack.shelf, its_id) for its_id in self._ids(_PACK_LINE, file)}
        self.broken |= {("limits", key) for key in self._ids(_LIMIT_LINE, file)}

    def _ids(self, pattern: re.Pattern[str], file: str) -> Iterator[str]:
        text = self.shelves.texts.get(file) or self.shelves.broken.get(file, "")
        return (match[1] for match in pattern.finditer(text))


def _place_limits(pack: Pack, file: str) -> None:
    """Limits are told their ids: ``pack/key``, and ``pack/key/2`` for the second of a key, and so on."""
    met: dict[str, int] = {}
    for number, limit in enumerate(pack.limits):
        met[limit.key] = met.get(limit.key, 0) + 1
        suffix = f"/{met[limit.key]}" if met[limit.key] > 1 else ""
        limit.placed(f"{pack.pack}/{limit.key}{suffix}", Spot(file, ("limits", number)))
