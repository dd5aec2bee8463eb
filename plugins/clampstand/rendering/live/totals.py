"""The kit for a class of another size: every size is worked out at build, so the browser only looks it up."""

import json
from dataclasses import dataclass

from clampstand.calculators.kit_totals import KitTotal, total_of
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.rendering.templating import total_amount

SIZES = range(1, 37)
"""Class sizes a reader may choose."""
IN_TABLE = (8, 12, 16, 20, 24, 28, 32, 36)


@dataclass(frozen=True, slots=True)
class Totals:
    """The lines of a kit list that depend on the size of the class.

    Args:
        names: what they are.
        texts: for each class size, the totals as printed, in the order of the names.
        start: the department's class size, or the nearest there is.
    """

    names: tuple[str, ...]
    texts: dict[int, tuple[str, ...]]
    start: int

    @property
    def sizes(self) -> tuple[int, ...]:
        """The sizes of the table."""
        return IN_TABLE

    @property
    def json(self) -> str:
        """The totals of every size, for the browser."""
        texts = [self.texts[size] for size in SIZES]
        return json.dumps(texts, ensure_ascii=False, separators=(",", ":"))


def totals_of(practical: Practical, book: Book) -> Totals | None:
    """The totals of a practical; None where no line depends on the size of the class."""
    varying = [line for line in practical.kit if line.per in ("group", "pair", "pupil")]
    if not varying:
        return None
    names = [_named(line.item, book) for line in varying]
    texts = {size: tuple(_text(total_of(line, practical, book, size)) for line in varying) for size in SIZES}
    return Totals(tuple(names), texts, min(max(book.department.class_size, SIZES[0]), SIZES[-1]))


def _named(item: str, book: Book) -> str:
    return book.kit[item].name if item in book.kit else item


def _text(total: KitTotal) -> str:
    return total_amount(total) or str(total.count)
