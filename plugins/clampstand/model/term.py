"""A word of the trade, what it means here, and what else it is called."""

import re
from functools import cached_property
from typing import ClassVar

from clampstand.model.base import Entry, Id, Line, Many, Words

_WHERE = re.compile(r" \([^()]*\)$")


class Term(Entry):
    """A word that a reader may not know. Its first use on a page leads to it."""

    shelf: ClassVar[str] = "glossary"

    term: Line
    means: Words
    also: Many[Line] = ()
    """Other names, old units and spellings of other countries, with the country in round brackets."""
    see: Many[Id] = ()
    """Terms that explain more."""

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Everything it is called, without the countries."""
        return tuple(dict.fromkeys(_WHERE.sub("", name) for name in (self.term, *self.also)))
