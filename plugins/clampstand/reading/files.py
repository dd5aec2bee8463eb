"""Which files a handbook has and their text: the only place of this room that touches the disk."""

import os
import re
import stat
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from clampstand.findings import Finding, Place
from clampstand.reading.findings import READING, did_you_mean, listed, stop, warning

LARGEST = 1_000_000
"""Bytes of one file."""

ELSEWHERE = ("pages",)
"""Folders of the content that others read."""

FILE_NAME = re.compile(r"[A-Za-z][A-Za-z0-9.-]{0,79}\.(?:yml|csv)")

ENDINGS = {"records": ".csv", "timetable": ".csv"}
"""How the names of a folder's files end, where it is not in ``.yml``."""
MEANT_SO = {".yml": (".yml", ".yaml"), ".csv": (".csv",)}
"""Ending → how it is written by those who mean it, small or in capitals."""
_A_FILE = {
    ".yml": "a definition is a file whose name ends in .yml",
    ".csv": "save it as CSV in UTF-8, with a name that ends in .csv",
}


@dataclass
class Shelves:
    """The text of every file, by folder, and what was wrong with files as such."""

    texts: dict[str, str] = field(default_factory=dict)
    """File, named from the content folder on → its text, lines ended by a line feed."""
    broken: dict[str, str] = field(default_factory=dict)
    """File that is no text → what can be made out of it all the same."""
    findings: list[Finding] = field(default_factory=list)

    def of(self, folder: str) -> Iterator[tuple[str, str]]:
        """Name without its ending, and full name, of the files of one folder, in order."""
        for file in sorted({*self.texts, *self.broken}):
            if file.startswith(f"{folder}/"):
                yield file.rsplit("/", 1)[1].removesuffix(ending_in(folder)), file


def gather(content: Path, folders: Mapping[str, tuple[str, ...]]) -> Shelves:
    """Read every file of the known folders, and say what is there besides.

    Args:
        content: the content folder.
        folders: the folders that hold definitions, each with the only files it may hold, or none for any.

    Raises:
        NotADirectoryError: there is no such folder.
    """
    if not content.is_dir():
        raise NotADirectoryError(f"there is no folder {content}")
    shelves = Shelves()
    for entry in _entries(content, shelves, ""):
        if entry.name in folders and entry.is_dir():
            _gather_folder(Path(entry.path), entry.name, folders[entry.name], shelves)
        elif entry.name not in ELSEWHERE or not entry.is_dir():
            names = (*folders, *ELSEWHERE)
            mend = did_you_mean(entry.name, names, f"the folders here are {listed(names, 'and', most=20)}")
            _unused(shelves, _printable(entry.name), mend)
    return shelves


def _entries(folder: Path, shelves: Shelves, inside: str) -> Iterator[os.DirEntry[str]]:
    """What is in a folder, by name; links are refused and names with a dot in front passed over."""
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        if entry.is_symlink():
            place = Place(inside + _printable(entry.name), 1, 1)
            message = "this is a link to somewhere else, which is not followed"
            shelves.findings.append(stop(READING, place, message, "put the file itself here"))
        elif not entry.name.startswith("."):
            yield entry


def ending_in(folder: str) -> str:
    """How the names of a folder's files end."""
    return ENDINGS.get(folder, ".yml")


def _gather_folder(folder: Path, name: str, only: tuple[str, ...], shelves: Shelves) -> None:
    ending = ending_in(name)
    for entry in _entries(folder, shelves, f"{name}/"):
        file = f"{name}/{_printable(entry.name)}"
        if not stat.S_ISREG(entry.stat(follow_symlinks=False).st_mode):
            _folder_inside(Path(entry.path), file, shelves)
        elif not entry.name.endswith(ending):
            _not_so_called(shelves, file, ending)
        elif not FILE_NAME.fullmatch(entry.name):
            message = f"{_printable(entry.name)} cannot be a file name here, for it is used as an id"
            mend = "use letters, digits, hyphens and dots, a letter first"
            shelves.findings.append(stop(READING, Place(file, 1, 1), message, mend))
        elif only and (stem := entry.name.removesuffix(ending)) not in only:
            _unused(shelves, file, did_you_mean(stem, only, f"the files here are {listed(only, 'and')}"))
        else:
            _read_file(Path(entry.path), file, shelves)


def _folder_inside(folder: Path, file: str, shelves: Shelves) -> None:
    """Says that nobody looks into a folder inside a folder, which stops everything if it holds anything."""
    mend = "put the files directly into the folder above"
    inside = sorted(os.listdir(folder)) if folder.is_dir() and os.access(folder, os.R_OK) else []
    if not inside:
        _unused(shelves, file, mend)
        return
    message = f"nothing in this folder is read or published: {listed(map(_printable, inside), 'and')}"
    shelves.findings.append(stop(READING, Place(file, 1, 1), message, mend))


def _not_so_called(shelves: Shelves, file: str, ending: str) -> None:
    """Says that a file is left out for its name: a stop where it is plainly meant to be read."""
    if not file.casefold().endswith(MEANT_SO[ending]):
        _unused(shelves, file, _A_FILE[ending])
        return
    message = f"{file.rsplit('/', 1)[-1]} would be left out, for its name does not end in {ending}"
    shelves.findings.append(stop(READING, Place(file, 1, 1), message, f"rename it: {_A_FILE[ending]}"))


def _unused(shelves: Shelves, file: str, mend: str) -> None:
    message = f"{file.rsplit('/', 1)[-1]} is read by nobody"
    shelves.findings.append(warning(READING, Place(file, 1, 1), message, mend))


def _read_file(path: Path, file: str, shelves: Shelves) -> None:
    try:
        with path.open("rb") as opened:
            raw = opened.read(LARGEST + 1)
    except OSError:
        shelves.broken[file] = ""
        finding = stop(READING, Place(file, 1, 1), "this file cannot be opened", "see who may read it")
        shelves.findings.append(finding)
        return
    if len(raw) > LARGEST:
        message = f"this file is larger than {LARGEST // 1000} kB"
        finding = stop(READING, Place(file, 1, 1), message, "spread it over several files")
    else:
        text = raw.removeprefix(b"\xef\xbb\xbf").replace(b"\r\n", b"\n")
        try:
            shelves.texts[file] = text.decode()
            return
        except UnicodeDecodeError as wrong:
            line = text.count(b"\n", 0, wrong.start) + 1
            before = text[text.rfind(b"\n", 0, wrong.start) + 1 : wrong.start]
            column = len(before.decode(errors="replace")) + 1
            message = "this file is not saved as UTF-8: there is a character here that cannot be read"
            finding = stop(READING, Place(file, line, column), message, "save it as UTF-8 in your editor")
    shelves.broken[file] = raw.decode(errors="replace")
    shelves.findings.append(finding)


def _printable(name: str) -> str:
    """A file name that can be printed, whatever bytes it is made of."""
    plain = name.encode("utf-8", "backslashreplace").decode()
    return "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in plain)
