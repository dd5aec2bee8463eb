"""Where a figure or a rule comes from, and who read it when."""

from typing import Annotated, ClassVar, Literal

from pydantic import WithJsonSchema

from clampstand.model.base import Day, Entry, Line, Link, Many, Words, fault, from_text
from clampstand.units import KINDS

SourceKind = Literal[
    "statute", "standard", "handbook", "data set", "paper", "web page", "common practice", "memory"
]

NO_QUANTITIES = ("age", "count", "interval", "observation")
"""What a source may tell besides quantities: years of age, how many, times by the calendar, what is seen."""
FIGURES = (*KINDS, *NO_QUANTITIES)
"""What a source may hold figures of."""


def _figure(text: str) -> str:
    if text not in FIGURES:
        raise fault(
            f"{text[:80] or 'nothing'} is no kind of figure",
            f"write a kind of quantity, such as length or fraction, or one of {', '.join(NO_QUANTITIES)}",
        )
    return text


class Citation(Entry):
    """A source that figures and limits may name. ``memory`` and ``common practice`` are said out loud."""

    shelf: ClassVar[str] = "citations"

    title: Line
    kind: SourceKind
    by: Line | None = None
    year: Line | None = None
    where: Line | None = None
    """Table, page, article."""
    link: Link | None = None
    read: Literal["whole", "excerpt", "package", "second hand", "memory"] = "excerpt"
    """How much of it was read, and by what road."""
    on: Day | None = None
    """The day it was read."""
    holds: Many[Annotated[str, from_text(_figure), WithJsonSchema({"enum": list(FIGURES)})]] = ()
    """What kinds of figure stand in it: ``[time, energy]`` for tables of decay."""
    note: Words | None = None

    @property
    def is_verified(self) -> bool:
        """Whether somebody read the figure in the source itself or in a data package made from it."""
        return self.read in ("whole", "excerpt", "package")
