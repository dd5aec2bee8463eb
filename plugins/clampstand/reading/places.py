"""One YAML file as plain text data, and the line and column of every key and value."""

from collections.abc import Mapping
from dataclasses import dataclass

from clampstand.findings import Finding, Place, Route, Spot
from clampstand.reading.walk import Plain, Stretch, Walk, place_of


@dataclass(frozen=True)
class Sheet:
    """One file: its data, every scalar the text that was written, and where everything stands.

    ``no``, ``12:30``, ``010``, ``1e3`` and dates are texts like any other: what they mean is for the model
    to say. ``data`` is None when the file could not be read to its end.
    """

    data: "Plain | None"
    findings: tuple[tuple[Route, Finding], ...]
    """What is wrong, each with the route it is wrong at."""
    keys: Mapping[Route, Stretch]
    values: Mapping[Route, Stretch]
    lines: list[str]
    file: str

    def place(self, route: Route, at_key: bool = False) -> Place:
        """The place of a value or key; for what is not there, of the nearest thing around it."""
        for end in range(len(route), 0, -1):
            stretch = (self.keys.get(route[:end]) if at_key else None) or self.values.get(route[:end])
            if stretch is not None:
                return place_of(*stretch, self.lines, self.file)
        return Place(self.file, 1, 1)


class Places:
    """Where a spot stands. Looks a file through again when first asked, and only then.

    Most runs have few findings, and the places of a whole handbook would be half a million tuples.
    """

    def __init__(self, texts: Mapping[str, str]) -> None:
        self._texts = texts
        self._sheets: dict[str, Sheet] = {}

    def of(self, spot: Spot) -> Place:
        """The place of a value or key; for what is not there, of the nearest thing around it."""
        return self._sheet(spot.file).place(spot.route, spot.at_key)

    def _sheet(self, file: str) -> Sheet:
        if file not in self._sheets:
            self._sheets[file] = read_sheet(self._texts.get(file, ""), file)
        return self._sheets[file]


def read_sheet(text: str, file: str) -> Sheet:
    """A file's text as data with places. Never raises, whatever is in the text.

    Args:
        text: the text, its lines ended by ``\\n``.
        file: what the file is called in places.
    """
    walk = Walk(text, file)
    walk.through()
    return Sheet(walk.data, tuple(walk.findings), walk.keys, walk.values, walk.lines, file)
