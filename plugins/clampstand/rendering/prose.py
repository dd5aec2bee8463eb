"""A person's sentence made safe for a page, with what it quotes in braces written out."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from markupsafe import Markup, escape

from clampstand.model.base import IN_BRACES
from clampstand.model.book import Book
from clampstand.model.practical import STOP_WORD, Practical
from clampstand.model.step import Number

_FREE = "free:"
_MINUS = re.compile(r"(?<!\S)-(?=[0-9])")
_BEFORE_UNIT = re.compile(r"(?<=[0-9]) (?=[^\s0-9])|(?<=[0-9]) (?=[0-9]{3}\b)")


def unbroken(quantity: str) -> str:
    """A quantity as written, with spaces that do not break before its unit, and a true minus sign.

    >>> unbroken("30 mm to 40 mm"), unbroken("-78.5 °C")
    ('30\u00a0mm to 40\u00a0mm', '−78.5\u00a0°C')
    """
    return _BEFORE_UNIT.sub("\u00a0", _MINUS.sub("−", quantity)).replace("\u00a0to ", " to ")


def in_a_row(names: Sequence[str]) -> str:
    """Names as a sentence lists them.

    >>> in_a_row(["switch", "ammeter", "wire"])
    'switch, ammeter and wire'
    """
    *first, last = names or ("",)
    return f"{', '.join(first)} and {last}" if first else last


@dataclass(frozen=True)
class Quotes:
    """What braces in a text may quote: declared numbers, slots, the stop word, anything that has an id."""

    book: Book
    numbers: Mapping[str, Number] = field(default_factory=dict)
    slots: Mapping[str, str] = field(default_factory=dict)
    stop_word: str | None = None

    def quantity(self, name: str) -> str | None:
        """The quantity a name stands for, or the one marked as deliberately free; None for other names."""
        if name.startswith(_FREE):
            return unbroken(name.removeprefix(_FREE).strip())
        number = self.numbers.get(name)
        return None if number is None else unbroken(str(number.value))

    def number_of(self, quoted: str) -> str | None:
        """The number on the label of a source or a supply, for a slot or for itself; None for other names."""
        if quoted in self.slots:
            return self.slots[quoted]
        return quoted if quoted in self.book.sources or quoted in self.book.supplies else None

    def name(self, quoted: str) -> str | None:
        """The name of what an id or a slot stands for, its length unbroken; None where there is nothing."""
        number = self.number_of(quoted)
        if number is not None:
            return number
        if quoted == STOP_WORD:
            return self.stop_word
        for shelf, attribute in _NAMED_BY:
            entry = self.book.shelf(shelf).get(quoted)
            if entry is not None:
                return unbroken(str(getattr(entry, attribute)))
        return None


_NAMED_BY = (
    ("kit", "name"),
    ("rooms", "name"),
    ("hazards", "name"),
    ("contacts", "role"),
    ("practicals", "title"),
    ("skills", "title"),
    ("emergencies", "title"),
)
"""The shelves a text may quote from, in the order they are asked, and what an entry is called by."""


def quotes_of(practical: Practical, book: Book) -> Quotes:
    """What the texts of a practical may quote. A slot stands for the first source that may fill it."""
    slots = {slot.name: slot.one_of[0] for slot in practical.sources}
    return Quotes(book, practical.numbers, slots, practical.stop_word)


_BEGINS = re.compile(r"(?:^|[.?!]\s)\s*\Z")
"""Where a sentence begins: at the beginning of the text, or after the end of another."""


def _first(name: str) -> str:
    """A name as the first word of a sentence; one with a capital of its own stays as it is, as pH meter."""
    return name if name[1:2].isupper() else name[:1].upper() + name[1:]


def _resolved(
    text: str, quotes: Quotes, of_quantity: Callable[[str], str], of_text: Callable[[str], str]
) -> str:
    pieces: list[str] = []
    end = 0
    for match in IN_BRACES.finditer(text):
        pieces.append(of_text(text[end : match.start()]))
        unbreakable = quotes.quantity(match[1]) or quotes.number_of(match[1])
        if unbreakable is not None:
            pieces.append(of_quantity(unbreakable))
        else:
            name = quotes.name(match[1])
            begins = _BEGINS.search(text, 0, match.start()) is not None
            pieces.append(of_text(match[0] if name is None else _first(name) if begins else name))
        end = match.end()
    pieces.append(of_text(text[end:]))
    return "".join(pieces)


def plain(text: str, quotes: Quotes) -> str:
    """The text with its quotes written out, for search and for attributes; nothing is escaped."""
    return _resolved(text, quotes, str, str)


def prose(text: str, quotes: Quotes) -> Markup:
    """The text with its quotes written out, as HTML in which the author's words stay words."""
    return Markup(_resolved(text, quotes, _quantity_html, lambda words: str(escape(words))))


def _quantity_html(quantity: str) -> str:
    return f'<span class="quantity">{escape(quantity)}</span>'
