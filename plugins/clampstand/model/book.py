"""Everything that was read, looked up by id."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from clampstand.model.base import Entry
from clampstand.model.citation import Citation
from clampstand.model.coefficients import CoefficientTable
from clampstand.model.department import Contact, Department, Room, Source, SupplyUnit
from clampstand.model.emergency import Emergency
from clampstand.model.hazard import Hazard
from clampstand.model.kit import Item
from clampstand.model.lesson import TimetabledLesson
from clampstand.model.limit import Limit, Pack
from clampstand.model.material import Material
from clampstand.model.nuclide import Nuclide
from clampstand.model.people import Person
from clampstand.model.practical import Practical
from clampstand.model.record import (
    FaultReport,
    Inspection,
    LeakTestDone,
    NearMiss,
    SignOff,
    SourceCount,
    SourceUse,
)
from clampstand.model.second_reading import (
    CertificateReadTwice,
    LimitReadTwice,
    PlateReadTwice,
    RoomMeasuredTwice,
    SecondReading,
    thing_read,
)
from clampstand.model.skill import Skill
from clampstand.model.substance import Substance
from clampstand.model.term import Term


@dataclass(frozen=True)
class Book:
    """The whole content of a handbook. Each shelf maps ids to definitions.

    The rows of a table are named by file and line (``week-03.5``) and lie on their shelf by date. What they
    say of sources, supplies and items is in those already: the newest record holds.
    """

    department: Department
    practicals: Mapping[str, Practical] = field(default_factory=dict)
    skills: Mapping[str, Skill] = field(default_factory=dict)
    emergencies: Mapping[str, Emergency] = field(default_factory=dict)
    kit: Mapping[str, Item] = field(default_factory=dict)
    hazards: Mapping[str, Hazard] = field(default_factory=dict)
    packs: Mapping[str, Pack] = field(default_factory=dict)
    citations: Mapping[str, Citation] = field(default_factory=dict)
    glossary: Mapping[str, Term] = field(default_factory=dict)
    contacts: Mapping[str, Contact] = field(default_factory=dict)
    rooms: Mapping[str, Room] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    supplies: Mapping[str, SupplyUnit] = field(default_factory=dict)
    nuclides: Mapping[str, Nuclide] = field(default_factory=dict)
    coefficients: Mapping[str, CoefficientTable] = field(default_factory=dict)
    materials: Mapping[str, Material] = field(default_factory=dict)
    substances: Mapping[str, Substance] = field(default_factory=dict)
    people: Mapping[str, Person] = field(default_factory=dict)
    timetable: Mapping[str, TimetabledLesson] = field(default_factory=dict)
    leak_tests: Mapping[str, LeakTestDone] = field(default_factory=dict)
    source_counts: Mapping[str, SourceCount] = field(default_factory=dict)
    inspections: Mapping[str, Inspection] = field(default_factory=dict)
    sign_offs: Mapping[str, SignOff] = field(default_factory=dict)
    uses: Mapping[str, SourceUse] = field(default_factory=dict)
    faults: Mapping[str, FaultReport] = field(default_factory=dict)
    near_misses: Mapping[str, NearMiss] = field(default_factory=dict)
    limits_read_twice: Mapping[str, LimitReadTwice] = field(default_factory=dict)
    certificates_read_twice: Mapping[str, CertificateReadTwice] = field(default_factory=dict)
    rooms_measured_twice: Mapping[str, RoomMeasuredTwice] = field(default_factory=dict)
    plates_read_twice: Mapping[str, PlateReadTwice] = field(default_factory=dict)

    def shelf(self, name: str) -> Mapping[str, Entry]:
        """A shelf by its name. Raises AttributeError for a name that is none."""
        shelf: Mapping[str, Entry] = getattr(self, name)
        return shelf

    @property
    def packs_in_force(self) -> tuple[Pack, ...]:
        """The packs the department has chosen, in its order."""
        return tuple(self.packs[name] for name in self.department.packs if name in self.packs)

    @cached_property
    def limits_in_force(self) -> tuple[Limit, ...]:
        """Every limit of the packs the department has chosen, but for those that others of them supersede."""
        limits = [(pack.pack, limit) for pack in self.packs_in_force for limit in pack.limits]
        gone = {limit.instead_of for _, limit in limits if limit.supersedes}
        return tuple(limit for pack, limit in limits if (pack, *limit.holds_for) not in gone)

    @cached_property
    def limits_of_key(self) -> Mapping[str, tuple[Limit, ...]]:
        """The limits in force by what they limit."""
        by_key: dict[str, tuple[Limit, ...]] = {}
        for limit in self.limits_in_force:
            by_key[limit.key] = (*by_key.get(limit.key, ()), limit)
        return by_key

    @cached_property
    def second_readings(self) -> Mapping[tuple[str, ...], SecondReading]:
        """What was read a second time, by its shelf and id → the newest reading of it."""
        shelves: tuple[Mapping[str, SecondReading], ...] = (
            self.limits_read_twice,
            self.certificates_read_twice,
            self.rooms_measured_twice,
            self.plates_read_twice,
        )
        return {row.of: row for shelf in shelves for row in shelf.values()}

    def second_reading_of(self, entry: Entry) -> SecondReading | None:
        """The newest second reading of a limit, a source, a room or an item of the kit."""
        return self.second_readings.get(thing_read(entry))

    @cached_property
    def sign_offs_by_whom(self) -> Mapping[tuple[str, tuple[str, str]], tuple[SignOff, ...]]:
        """Person and what it is for → the sign-offs there are."""
        found: dict[tuple[str, tuple[str, str]], tuple[SignOff, ...]] = {}
        for entry in self.sign_offs.values():
            of_both = (entry.person, entry.subject)
            found[of_both] = (*found.get(of_both, ()), entry)
        return found

    @cached_property
    def strictest_known(self) -> dict[tuple[object, ...], Limit | None]:
        """Key and circumstances → the strictest limit, as far as anybody has asked: lessons ask alike."""
        return {}

    def units_of(self, item_id: str) -> tuple[SupplyUnit, ...]:
        """The supplies owned of one kind."""
        return tuple(unit for unit in self.supplies.values() if unit.item == item_id)
