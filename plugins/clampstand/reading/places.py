"""Where every key, value and cell of the content stands, for whoever asks."""

from collections.abc import Mapping

from clampstand.findings import Place, Spot
from clampstand.reading.sheet import Sheet
from clampstand.reading.tables import table_sheet
from clampstand.reading.walk import Walk


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
            taken_apart = table_sheet if file.endswith(".csv") else read_sheet
            self._sheets[file] = taken_apart(self._texts.get(file, ""), file)
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
