"""Second readings: what somebody else found on the certificate, the plate, the tape or in the law itself.

A value that nothing else in the book can vouch for is read twice, by two people, and both readings are kept.
A cell that is left empty was not read.
"""

from abc import abstractmethod
from collections.abc import Mapping
from typing import ClassVar, Literal

from pydantic import Field

from clampstand.findings import Route
from clampstand.model.base import (
    Activity,
    AirChanges,
    CalendarTime,
    Capacitance,
    Concentration,
    Current,
    Day,
    Entry,
    Id,
    Length,
    Resistance,
    Time,
    Voltage,
    Volume,
    YesNo,
)
from clampstand.model.department import RoomLevel, SourceForm
from clampstand.model.limit import Limit, Stated
from clampstand.model.people import Code, Remark


def thing_read(entry: Entry) -> tuple[str, ...]:
    """What may be read a second time, by its shelf and id; a limit by its pack, key and circumstances."""
    if isinstance(entry, Limit):
        return _limit_named(entry.id.partition("/")[0], entry.key, entry.applies_to.in_words)
    return entry.shelf, entry.id


def _limit_named(pack: str, key: str, holds_for: str) -> tuple[str, ...]:
    """A limit by its pack, its key and what it holds for, in whatever order that is said."""
    return (Limit.shelf, pack, key, *sorted(word.strip() for word in holds_for.split(",")))


class SecondReading(Entry):
    """One second reading of one thing. The newest holds."""

    reads: ClassVar[dict[str, Route]] = {}
    """Field of the row → where the first reading of it stands in the definition."""

    date: Day
    read_from: Remark = Field(alias="from")
    """What was looked at: the certificate, the plate, the page of the statute."""
    by: Code
    note: Remark | None = None

    @property
    @abstractmethod
    def of(self) -> tuple[str, ...]:
        """What was read: its shelf and id."""

    @property
    def read(self) -> Mapping[str, object]:
        """What was read of it, by field."""
        return {field: value for field in self.reads if (value := getattr(self, field)) is not None}

    @classmethod
    def first_of(cls, thing: Entry, field: str) -> object:
        """What the definition says of a field that is read twice; None where it says nothing."""
        value: object = thing
        for name in cls.reads[field]:
            value = getattr(value, str(name), None)
        return value


class LimitReadTwice(SecondReading):
    """One limit, read once more at its source."""

    shelf: ClassVar[str] = "limits_read_twice"
    reads: ClassVar[dict[str, Route]] = {
        name: (name,) for name in ("says", "averaged_over", "layer", "citation", "waivable")
    }

    pack: Id
    key: Id
    holds_for: Remark | None = Field(default=None, alias="for")
    """What it applies to, where it does not hold for everything: ``dc``, ``Am-241``."""
    says: Stated
    averaged_over: Time | None = Field(default=None, alias="averaged over")
    layer: Literal["law", "guidance", "local rule"] | None = None
    citation: Id | None = None
    waivable: Literal["yes", "no"] | None = None

    @property
    def of(self) -> tuple[str, ...]:
        """The limit."""
        return _limit_named(self.pack, self.key, self.holds_for or "")


class CertificateReadTwice(SecondReading):
    """The certificate of one source, read once more."""

    shelf: ClassVar[str] = "certificates_read_twice"
    reads: ClassVar[dict[str, Route]] = {
        "nuclide": ("nuclide",),
        "activity": ("activity",),
        "reference_date": ("reference_date",),
        "form": ("form",),
        "held": ("held",),
        "received": ("received",),
        "working_life": ("working_life",),
    }

    source: Id
    nuclide: Id | None = None
    activity: Activity | None = None
    reference_date: Day | None = Field(default=None, alias="reference date")
    form: SourceForm | None = None
    held: Literal["forceps", "gloved hand"] | None = None
    received: Day | None = None
    working_life: CalendarTime | None = Field(default=None, alias="working life")

    @property
    def of(self) -> tuple[str, ...]:
        """The source."""
        return "sources", self.source


class RoomMeasuredTwice(SecondReading):
    """One room, measured once more."""

    shelf: ClassVar[str] = "rooms_measured_twice"
    reads: ClassVar[dict[str, Route]] = {name: (name,) for name in ("level", "volume", "air_changes")}

    room: Id
    level: RoomLevel | None = None
    volume: Volume | None = None
    air_changes: AirChanges | None = Field(default=None, alias="air changes")

    @property
    def of(self) -> tuple[str, ...]:
        """The room."""
        return "rooms", self.room


class PlateReadTwice(SecondReading):
    """One kind of item, looked at once more: its plate, its label, a rule laid beside it."""

    shelf: ClassVar[str] = "plates_read_twice"
    reads: ClassVar[dict[str, Route]] = {
        "length": ("length",),
        "concentration": ("concentration",),
        "greatest_voltage": ("output", "greatest_voltage"),
        "short_circuit_current": ("output", "short_circuit_current"),
        "current": ("output", "current"),
        "output_resistance": ("output", "output_resistance"),
        "capacitance": ("output", "capacitance"),
        "fragile": ("fragile",),
        "latex": ("latex",),
        "counts_radiation": ("counts_radiation",),
        "dip_tube": ("cylinder", "dip_tube"),
    }

    item: Id
    length: Length | None = None
    concentration: Concentration | None = None
    greatest_voltage: Voltage | None = Field(default=None, alias="greatest voltage")
    short_circuit_current: Current | None = Field(default=None, alias="short-circuit current")
    current: Literal["dc", "ac"] | None = None
    output_resistance: Resistance | None = Field(default=None, alias="output resistance")
    capacitance: Capacitance | None = None
    fragile: YesNo | None = None
    latex: YesNo | None = None
    counts_radiation: YesNo | None = Field(default=None, alias="counts radiation")
    dip_tube: YesNo | None = Field(default=None, alias="dip tube")

    @property
    def of(self) -> tuple[str, ...]:
        """The item of the kit."""
        return "kit", self.item
