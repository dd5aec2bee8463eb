"""One file of the content as data, with what is wrong with it and where everything in it stands."""

from collections.abc import Mapping
from dataclasses import dataclass

from clampstand.findings import Finding, Place, Route
from clampstand.reading.walk import Plain, Stretch, place_of


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
