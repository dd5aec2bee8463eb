"""What each field names: one table, from a class and its field to the shelf or list the name must be on."""

from collections.abc import Iterator
from typing import Any

from clampstand.findings import Route
from clampstand.model.base import Definition
from clampstand.model.coefficients import CoefficientTable
from clampstand.model.department import Department, Room, Source, SupplyUnit
from clampstand.model.emergency import Action, Emergency
from clampstand.model.hazard import Hazard, WornAgainst
from clampstand.model.kit import Item, Worn
from clampstand.model.lesson import TimetabledLesson
from clampstand.model.limit import AppliesTo, Limit, Pack
from clampstand.model.material import Material
from clampstand.model.nuclide import Branches, HalfLife, Lines, Nuclide
from clampstand.model.practical import (
    AllowedException,
    Circuit,
    Expectation,
    Fault,
    HazardHere,
    KitLine,
    Needs,
    Practical,
    Release,
    Review,
    SourceSlot,
    Trial,
    Waste,
)
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
)
from clampstand.model.skill import Skill
from clampstand.model.step import Number, Step
from clampstand.model.substance import Figure, Substance, Table
from clampstand.model.term import Term

OWN_KIT = "own kit"
"""The kit list of the definition itself, or what always stands in its rooms."""
SLOT = "slot"
NUMBER = "number"
DISTANCE = "number or quantity"
STEP = "step"
RESULT = "result"
GIVEN = "given"
LIMIT = "limits"
THING = "thing"
"""A source, a supply or an item of the kit."""
WORD = "word"
"""A word that a practical declares, as its stop word."""
QUOTE = "quote"
"""Anything that curly brackets in a sentence may name."""

SHELVES: dict[str, str] = {
    "kit": "items of the kit",
    "practicals": "practicals",
    "skills": "skills",
    "emergencies": "emergencies",
    "hazards": "hazards",
    "packs": "packs of limits",
    "citations": "citations",
    "glossary": "terms of the glossary",
    "contacts": "contacts of the department",
    "rooms": "rooms",
    "sources": "sources of the register",
    "supplies": "supplies of the department",
    "nuclides": "nuclides of the reference figures",
    "coefficients": "tables of the reference figures",
    "materials": "materials of the reference figures",
    "substances": "substances of the reference figures",
    "people": "role codes of the department",
    "timetable": "lessons of the timetable",
    "leak_tests": "leak tests on record",
    "source_counts": "counts on record",
    "inspections": "inspections on record",
    "sign_offs": "sign-offs on record",
    "uses": "entries of the use log",
    "faults": "faults on record",
    "near_misses": "near misses on record",
    "limits_read_twice": "second readings of limits",
    "certificates_read_twice": "second readings of certificates",
    "rooms_measured_twice": "second measurements of rooms",
    "plates_read_twice": "second readings of plates",
}
"""Every shelf of the book, and what lies on it, as a message says it."""

_STEP_ITEMS = [
    "holds_with",
    "switches_off",
    "discharges",
    "discharges_with",
    "touches",
    "puts_on",
    "takes_off",
    "puts_up",
    "takes_down",
    "brings_in",
    "handles",
    "puts_in",
    "takes_away",
    "opens",
    "closes",
    "lights",
    "puts_out",
]
_STEP_SLOTS = ["signs_out", "takes_out", "picks_up", "sets_down", "puts_back", "counts_back"]

_CODES: dict[type[Definition], tuple[str, ...]] = {
    TimetabledLesson: ("teacher", "observer", "second_adult"),
    LeakTestDone: ("by",),
    SourceCount: ("by", "second"),
    Inspection: ("by",),
    SignOff: ("person", "by"),
    SourceUse: ("out_by", "back_by"),
    FaultReport: ("by", "cleared_by"),
    NearMiss: ("by", "closed_by"),
    **dict.fromkeys((LimitReadTwice, CertificateReadTwice, RoomMeasuredTwice, PlateReadTwice), ("by",)),
}

NAMED: dict[tuple[type[Definition], str], str] = {
    **{(Step, name): OWN_KIT for name in _STEP_ITEMS},
    **{(Step, name): SLOT for name in _STEP_SLOTS},
    (Step, "room"): "rooms",
    (Step, "after"): STEP,
    (Step, "builds_on"): RESULT,
    (Step, "switches_on"): NUMBER,
    (Step, "fades_with"): NUMBER,
    (Step, "stand"): DISTANCE,
    (Number, "obeys"): LIMIT,
    (Number, "source"): "citations",
    (Number, "half_life_of"): "nuclides",
    (Number, "fades_with"): GIVEN,
    (Practical, "where"): "rooms",
    (Practical, "emergency"): "emergencies",
    (Practical, "see_also"): "practicals",
    (Practical, "sources_read"): "citations",
    (Needs, "skills"): "skills",
    (KitLine, "item"): "kit",
    (KitLine, "allowance_kept"): "rooms",
    (SourceSlot, "one_of"): "sources",
    (Circuit, "supply"): OWN_KIT,
    (Circuit, "feeds"): OWN_KIT,
    (Circuit, "voltage"): NUMBER,
    (Circuit, "through"): NUMBER,
    (Circuit, "stores"): NUMBER,
    (Release, "item"): OWN_KIT,
    (Release, "vented"): NUMBER,
    (Expectation, "at"): NUMBER,
    (Expectation, "given"): GIVEN,
    (Expectation, "source"): "citations",
    (Fault, "touches"): OWN_KIT,
    (HazardHere, "hazard"): "hazards",
    (Waste, "what"): "kit",
    (Trial, "by"): "contacts",
    (Review, "written_by"): "contacts",
    (Review, "approved_by"): "contacts",
    (AllowedException, "approved_by"): "contacts",
    (Skill, "kit"): "kit",
    (Skill, "emergency"): "emergencies",
    (Action, "needs"): "kit",
    (Emergency, "ring"): "contacts",
    (Emergency, "sources_read"): "citations",
    (Item, "hazards"): "hazards",
    (Item, "substance"): "substances",
    (Item, "kept_in"): "rooms",
    (Item, "instead"): "kit",
    (Department, "packs"): "packs",
    (Department, "approvers"): "contacts",
    (Hazard, "answered_by"): "emergencies",
    (Hazard, "leads_to"): "emergencies",
    (Room, "equipment"): "kit",
    (Source, "hazards"): "hazards",
    (Term, "see"): "glossary",
    (SupplyUnit, "item"): "kit",
    (Limit, "citation"): "citations",
    (Limit, "supersedes"): "packs",
    (AppliesTo, "nuclide"): "nuclides",
    (Source, "nuclide"): "nuclides",
    (Source, "in_equilibrium_with"): "nuclides",
    (Figure, "citation"): "citations",
    (HalfLife, "citation"): "citations",
    (Lines, "citation"): "citations",
    (Branches, "citation"): "citations",
    (CoefficientTable, "citation"): "citations",
    (Table, "citation"): "citations",
    (TimetabledLesson, "room"): "rooms",
    (TimetabledLesson, "practical"): "practicals",
    (LeakTestDone, "source"): "sources",
    (SourceCount, "source"): "sources",
    (Inspection, "unit"): "supplies",
    (SignOff, "practical"): "practicals",
    (SignOff, "skill"): "skills",
    (SourceUse, "source"): "sources",
    (SourceUse, "practical"): "practicals",
    (SourceUse, "room"): "rooms",
    (FaultReport, "thing"): THING,
    (NearMiss, "practical"): "practicals",
    (LimitReadTwice, "pack"): "packs",
    (LimitReadTwice, "key"): LIMIT,
    (LimitReadTwice, "citation"): "citations",
    (CertificateReadTwice, "source"): "sources",
    (CertificateReadTwice, "nuclide"): "nuclides",
    (RoomMeasuredTwice, "room"): "rooms",
    (PlateReadTwice, "item"): "kit",
    **{(kind, name): "people" for kind, names in _CODES.items() for name in names},
}
"""Class and field → where the text in it, or every text of its list or block, must be found."""

NAMED_BY_KEY: dict[tuple[type[Definition], str], str] = {(Step, "switches_on"): OWN_KIT}
"""The same for fields whose keys are names."""

NO_NAME: frozenset[tuple[type[Definition], str]] = frozenset(
    {
        (AllowedException, "rule"),  # a rule of the checks
        (Emergency, "sign"),  # a drawing
        (Expectation, "compute"),  # a calculator
        (Hazard, "sign"),
        (Hazard, "in_place"),  # a word that hazards and items share, as are the next ones
        (WornAgainst, "against"),
        (Worn, "against"),
        (Item, "stops"),
        (Limit, "key"),
        (Limit, "with_progeny"),  # of some progeny there are no figures
        (Pack, "pack"),
        (Nuclide, "element"),
        (Nuclide, "progeny"),  # what it turns into may be stable, or of no concern
        (Material, "figures"),  # a name the model itself knows
        (Substance, "figures"),
        (Substance, "tables"),
    }
)
"""Fields of ids that are looked up on another floor, or are words of their own."""


class Named:
    """One name in the content: what is written, where, and on which shelf it must be."""

    __slots__ = ("at_key", "route", "shelf", "text")

    def __init__(self, text: str, route: Route, shelf: str, at_key: bool = False) -> None:
        self.text, self.route, self.shelf, self.at_key = text, route, shelf, at_key


def names_in(definition: Definition, route: Route = ()) -> Iterator[Named]:
    """Every name in a definition and in the parts of it, and every sentence that has a curly bracket."""
    kind = type(definition)
    for name, value in definition.__dict__.items():
        if not value:
            continue
        if isinstance(value, dict) and (kind, name) in NAMED_BY_KEY:
            shelf = NAMED_BY_KEY[kind, name]
            yield from (Named(key, (*route, name, key), shelf, at_key=True) for key in value)
        yield from _names(value, (*route, name), NAMED.get((kind, name), QUOTE))


def _names(value: Any, route: Route, shelf: str) -> Iterator[Named]:
    if isinstance(value, str):
        if shelf != QUOTE or "{" in value or "}" in value:
            yield Named(value, route, shelf)
    elif isinstance(value, Definition):
        yield from names_in(value, route)
    elif isinstance(value, tuple):
        for number, part in enumerate(value):
            yield from _names(part, (*route, number), shelf)
    elif isinstance(value, dict):
        for key, part in value.items():
            yield from _names(part, (*route, key), shelf)
