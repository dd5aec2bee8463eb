"""An item of kit or material, with the properties that rules judge by. Its name decides nothing."""

from typing import ClassVar, Literal

from clampstand.model.base import (
    AnyAmount,
    CalendarTime,
    Capacitance,
    Concentration,
    Count,
    Current,
    Definition,
    Entry,
    Id,
    Length,
    Line,
    Many,
    Resistance,
    Voltage,
    Words,
    YesNo,
)
from clampstand.model.hazard import BodyPart
from clampstand.model.waste import WasteRoute

_COUNTED_IN = {"pairs of ": "pair of ", "sets of ": "set of "}
"""How the plural of what comes in pairs or sets begins, and how one of them is called."""


class Worn(Definition):
    """How an item protects the person who wears it."""

    on: BodyPart
    against: Many[Id]


class Output(Definition):
    """What a supply can drive into whatever touches its terminals."""

    greatest_voltage: Voltage
    short_circuit_current: Current
    current: Literal["dc", "ac"]
    drive: Literal["mains", "belt"] = "mains"
    """What makes the voltage: a belt carries charge by hand or motor, and its voltage has no dial."""
    output_resistance: Resistance | None = None
    capacitance: Capacitance | None = None


class Container(Definition):
    """How a container is closed: a gas-tight one bursts when what is in it turns to gas."""

    seal: Literal["gas-tight", "loose", "open"]


class Cylinder(Definition):
    """A gas cylinder: whether it gives liquid, what is fitted to it, and how it stands.

    It counts as lying and loose unless somebody wrote down that it is upright and secured.
    """

    dip_tube: YesNo
    regulator: YesNo = False
    """Whether a pressure regulator is fitted."""
    upright: YesNo = False
    secured: YesNo = False
    """Whether a chain, strap or cage keeps it from falling."""


class Item(Entry):
    """Something a practical may name in its kit."""

    shelf: ClassVar[str] = "kit"

    name: Line
    plural: Line | None = None
    also: Many[Line] = ()
    """Other words people use for it; search knows them."""
    kept_in: Id | None = None
    """The room it is kept in."""
    kept: Line | None = None
    """The place in that room: the shelf, the drawer, the hook."""
    owned: Count | None = None
    fragile: YesNo = False
    consumable: YesNo = False
    lead: CalendarTime | None = None
    """How long before the lesson it must be ordered."""
    check: Line | None = None
    """What to look at before it goes out."""
    hazards: Many[Id] = ()
    substance: Id | None = None
    """The substance of the reference figures it is made of or holds."""

    length: Length | None = None
    worn: Worn | None = None
    stops: Many[Id] = ()
    """What it stops when it stands between people and a hazard, as a screen does."""
    output: Output | None = None
    resistance: Resistance | None = None
    capacitance: Capacitance | None = None
    concentration: Concentration | None = None
    container: Container | None = None
    cylinder: Cylinder | None = None
    laser_class: Line | None = None

    grips_sources: YesNo = False
    discharges: YesNo = False
    """Whether it can safely short what a supply has charged."""
    turns_to_gas: YesNo = False
    """Whether all of it ends as gas in the room, as dry ice does."""
    flammable_vapour: YesNo = False
    ignites: Literal["flame", "spark", "hot surface"] | None = None
    """How it can set vapour alight while it is lit or switched on."""
    counts_radiation: YesNo = False
    needs_washing: Many[Literal["hands", "bench", "tray"]] = ()
    """What must be washed after it: for what rubs off, infects or stains."""
    never_into: Many[WasteRoute] = ()
    """Where it may never go, whatever is left of it."""
    latex: YesNo = False
    instead: Id | None = None
    """The item for those who cannot use this one."""
    given_out: AnyAmount | None = None
    """For what is measured out: how much a kit list usually asks for each, from the least to the most."""
    note: Words | None = None

    @property
    def many(self) -> str:
        """Its name for more than one."""
        return self.plural or self.name

    def called(self, count: int) -> str:
        """Its name after a count: 2 pairs of gloves, 1 pair of gloves."""
        if count == 1:
            for many, one in _COUNTED_IN.items():
                if self.many.startswith(many):
                    return f"{one}{self.many.removeprefix(many)}"
        return self.many if count > 1 else self.name
