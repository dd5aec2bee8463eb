"""The department: its rooms, its people by role, its sources and its supplies."""

from typing import ClassVar, Literal

from clampstand.model.base import (
    Activity,
    AirChanges,
    CalendarTime,
    Count,
    Current,
    Day,
    Definition,
    Entry,
    Fraction,
    Id,
    Length,
    Line,
    Link,
    Many,
    Some,
    Time,
    Volume,
    Words,
    YesNo,
)
from clampstand.model.people import ClockTime

RoomLevel = Literal["above ground", "below ground", "open air"]
"""Where a room lies: gas that is heavier than air stays below the ground."""

SourceForm = Literal[
    "sealed disc", "sealed cup", "sealed point", "sealed bottle", "generator", "unsealed", "object"
]
"""How a source is made."""

ReadTwice = Literal["limits", "certificates", "rooms", "plates"]
"""What a department may have undertaken to read twice."""


class Contact(Entry):
    """A role and how to reach whoever holds it. Never a person's name."""

    shelf: ClassVar[str] = "contacts"

    role: Line
    call: Line
    """What to dial or where to go."""


class Department(Entry):
    """The department this handbook is for, and the day its numbers are worked out for."""

    shelf: ClassVar[str] = "department"

    name: Line
    packs: Many[Id]
    """The packs of limits in force here. The department's own rules are one of them."""
    computed_for: Day
    class_size: Some
    groups_of: Some
    lesson: Time
    outdoor_carbon_dioxide: Fraction
    technician_starts: ClockTime | None = None
    """When the first technician is there in the morning."""
    youngest_in_year: dict[Line, Count] = {}
    """School year, as the timetable writes it → the age of its youngest when it begins."""
    warn_before: CalendarTime | None = None
    """How long before a sign-off ends its end is told."""
    teacher_to_source: Length
    """How far the teacher's body is taken to be from a source held in forceps, for the dose worked out."""
    review_every: CalendarTime
    reads_twice: Many[ReadTwice] = ()
    """What is read a second time by somebody else: a warning names everything of it that was read once."""
    approvers: dict[Line, Many[Id]] = {}
    """Family of hazards, or subject → the roles that may approve a practical, the first choice first."""
    address: Link | None = None
    """Where the handbook is published, for the codes printed on cards."""
    defer: Words
    """What comes before this handbook: local rules, licences, the employer."""


class Room(Entry):
    """A room, with what decides whether a practical can be done in it."""

    shelf: ClassVar[str] = "rooms"

    name: Line
    level: RoomLevel
    volume: Volume | None = None
    """Left out for the open air."""
    air_changes: AirChanges | None = None
    holds: Count | None = None
    """How many people may work in it at once; nought for one that is only passed through."""
    features: Many[Line] = ()
    equipment: Many[Id] = ()
    """Items that are always there: spill kit, fire blanket, extinguisher."""
    note: Words | None = None

    @property
    def is_open_air(self) -> bool:
        """Whether gas cannot gather in it."""
        return self.level == "open air"


class LeakTest(Definition):
    """The last wipe test of a source."""

    last: Day
    result: Literal["pass", "fail"]
    every: CalendarTime


class Disposal(Definition):
    """How a source left."""

    on: Day
    route: Line
    certificate: Line


class Source(Entry):
    """A source on the register."""

    shelf: ClassVar[str] = "sources"

    nuclide: Id
    in_equilibrium_with: Many[Id] = ()
    """Progeny that are in it with the same activity."""
    activity: Activity
    reference_date: Day
    form: SourceForm
    emits: Many[Literal["alpha", "beta", "gamma"]]
    held: Literal["forceps", "gloved hand"] = "forceps"
    """What may touch it."""
    window: Line | None = None
    use: Line | None = None
    serial: Line
    certificate: Line
    received: Day
    received_from: Line | None = None
    working_life: CalendarTime | None = None
    position: Line
    leak_test: LeakTest
    last_seen: Day
    basis: Line
    """Under what exemption, registration or licence it is kept."""
    permit: Line | None = None
    """The permit or licence that covers it. Without one it counts towards what may be kept without."""
    status: Literal["in use", "quarantined", "awaiting disposal", "disposed of"]
    disposal: Disposal | None = None
    hazards: Many[Id] = ()
    note: Words | None = None


class SupplyUnit(Entry):
    """One supply the department owns, of a kind listed in the kit."""

    shelf: ClassVar[str] = "supplies"

    item: Id
    serial: Line
    tested: Day
    every: CalendarTime
    measured_current: Current | None = None
    """Greatest current found at the last test."""
    status: Literal["in use", "faulty", "quarantined", "disposed of"]
    decoy: YesNo = False
    note: Words | None = None
