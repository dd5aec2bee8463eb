"""Where a figure or a rule comes from, and who read it when."""

from typing import ClassVar, Literal

from clampstand.model.base import Day, Entry, Line, Link, Words

SourceKind = Literal[
    "statute", "standard", "handbook", "data set", "paper", "web page", "common practice", "memory"
]


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
    note: Words | None = None

    @property
    def is_verified(self) -> bool:
        """Whether somebody read the figure in the source itself or in a data package made from it."""
        return self.read in ("whole", "excerpt", "package")
