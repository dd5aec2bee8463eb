"""What can hurt, and what must be worn or in place before anybody meets it."""

from typing import ClassVar, Literal

from clampstand.model.base import Definition, Entry, Id, Line, Many, Words
from clampstand.model.waste import WasteRoute

BodyPart = Literal["hands", "eyes", "face", "ears", "body", "feet"]


class WornAgainst(Definition):
    """Protection a hazard asks for: which part of whom, against what."""

    on: Many[BodyPart]
    """Any one of these parts covered is enough: eyes or face."""
    against: Id
    who: Literal["doer", "everyone"] = "doer"


class Hazard(Entry):
    """A hazard and the controls that answer it. Kit, materials and sources name the hazards they bring."""

    shelf: ClassVar[str] = "hazards"

    name: Line
    family: Literal[
        "radiation", "electricity", "cold", "gas", "fire", "chemical", "biological", "mechanical", "light"
    ]
    sign: Id
    """The drawn sign that stands beside the words."""
    harm: Line
    """What it does to a person."""
    controls: tuple[Line, ...]
    worn: tuple[WornAgainst, ...] = ()
    in_place: Many[Id] = ()
    """What a barrier must stop, for hazards that need a barrier between them and people."""
    in_place_while: Literal["met", "on"] = "met"
    """When it must stand: whenever the hazard is met, or only while what brings it is lit, as a laser."""
    excludes: Many[Line] = ()
    """Who must keep away altogether: whoever has an implanted device. A practical repeats them."""
    comes_from: Literal["things", "what is done"] = "things"
    """Whether an item or a source brings it, or only what is done: a dark room, a reaction, a sight."""
    never_into: Many[WasteRoute] = ()
    """The ways of waste it forbids for whatever brings it."""
    answered_by: Many[Id] = ()
    """The emergency procedures that say what to do when it has hurt somebody; any one of them is enough."""
    leads_to: Many[Id] = ()
    """Further procedures it may call for, which do not answer it alone."""
    note: Words | None = None

    @property
    def asks_when_met(self) -> bool:
        """Whether meeting it asks for something, though nothing is lit or switched on."""
        return bool(self.worn or (self.in_place and self.in_place_while == "met"))
