"""What a check says and where: spots in the content, problems, and findings with their line and column."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TypeAlias

Route: TypeAlias = tuple[str | int, ...]
"""The way from the top of a file to one value: ``("run", 3, "takes")``."""


class Severity(StrEnum):
    """What a finding does: a stop keeps everything from being published, a warning is printed."""

    STOP = "stop"
    WARNING = "warning"


class Layer(StrEnum):
    """Whose rule it is. The three are never shown alike; physics is what no department can change."""

    LAW = "law"
    GUIDANCE = "guidance"
    LOCAL = "local rule"
    PHYSICS = "physics"
    HANDBOOK = "handbook"
    """What this handbook needs of a definition to be able to check it at all."""


@dataclass(frozen=True, slots=True)
class Spot:
    """One value of a content file, or its key, before anybody has looked up the line."""

    file: str
    route: Route = ()
    at_key: bool = False

    def to(self, *route: str | int) -> "Spot":
        """The spot of a value further in."""
        return Spot(self.file, (*self.route, *route), self.at_key)

    @property
    def row(self) -> "Spot":
        """The spot of the row it lies in, where it is a cell of a table."""
        return Spot(self.file, self.route[:1])

    def key(self) -> "Spot":
        """The same spot, pointing at the key instead of its value."""
        return Spot(self.file, self.route, at_key=True)


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A place a person can go to: lines and columns count from 1."""

    file: str
    line: int
    column: int
    width: int = 1


@dataclass(frozen=True, slots=True)
class Whose:
    """Whose rule a finding rests on: its layer, in words, and where it can be read."""

    layer: Layer
    says: str
    citation: str = ""
    spot: Spot | None = None
    waivable: bool = True
    """Whether whoever made it lets it be waived at all."""


@dataclass(frozen=True, slots=True)
class Problem:
    """What a rule found. A rule knows routes, not lines; the engine turns one into the other.

    Args:
        spot: where.
        message: subject and fault in one sentence, for a technician who does not program.
        found: what is written or comes of it.
        needed: what should be there.
        mend: one thing to do.
        whose: whose rule it is.
        related: other spots that matter, each with a few words ("taken out here").
        severity: what it does, where that is other than what the rule says.
    """

    spot: Spot
    message: str
    found: str = ""
    needed: str = ""
    mend: str = ""
    whose: Whose | None = None
    related: tuple[tuple[Spot, str], ...] = ()
    severity: Severity | None = None


@dataclass(frozen=True, slots=True)
class Finding:
    """A problem with its rule, its severity and its places looked up."""

    place: Place
    rule: str
    severity: Severity
    message: str
    found: str = ""
    needed: str = ""
    mend: str = ""
    whose: Whose | None = None
    whose_place: Place | None = None
    related: tuple[tuple[Place, str], ...] = field(default=())
    subject: str = ""
    """The definition the finding is about, as ``practicals/spark-counter``."""

    @property
    def stops(self) -> bool:
        """Whether nothing may be published while this stands."""
        return self.severity is Severity.STOP


def in_order(findings: list[Finding]) -> list[Finding]:
    """The one order findings are shown in: by file and place, then by rule."""
    return sorted(findings, key=lambda f: (f.place, f.severity, f.rule, f.message))
