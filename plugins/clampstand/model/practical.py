"""A practical: what is done, by whom, with what, where, and what it should show."""

import re
from typing import Annotated, ClassVar, Literal

from pydantic import Field, WithJsonSchema

from clampstand.model.base import (
    AirChanges,
    AnyAmount,
    Count,
    Day,
    Definition,
    Entry,
    Id,
    Line,
    Many,
    MassRate,
    Some,
    Time,
    Words,
    YesNo,
    fault,
    from_text,
)
from clampstand.model.step import ActorName, Number, Step
from clampstand.model.waste import WasteRoute

Phase = Literal["prepare", "set_up", "run", "clear_up"]
PHASES: tuple[Phase, ...] = ("prepare", "set_up", "run", "clear_up")

STOP_WORD = "stop word"
"""What a text quotes the stop word of its practical by."""

Per = Literal["class", "group", "pair", "pupil", "adult"]


class Ages(Definition):
    """The ages a practical is for."""

    youngest: int
    oldest: int | None = None

    def __str__(self) -> str:
        return f"{self.youngest} to {self.oldest}" if self.oldest else f"{self.youngest} and over"


_AGES = re.compile(r"([0-9]{1,2})(?: to ([0-9]{1,2})| and over)")


def _ages(text: str) -> Ages:
    match = _AGES.fullmatch(text)
    if match is None:
        raise fault(f"{text[:80] or 'nothing'} is not a range of ages", "write 14 to 18, or 11 and over")
    ages = Ages(youngest=int(match[1]), oldest=int(match[2]) if match[2] else None)
    if ages.oldest is not None and ages.oldest < ages.youngest:
        raise fault(f"{text} runs backwards", "write the younger age first")
    return ages


class RoomNeeds(Definition):
    """What the room must have."""

    features: Many[Line] = ()
    air_changes: AirChanges | None = None
    """The ventilation the practical counts on; it is then a condition for running it."""
    ventilated_by: Line | None = None
    """How that ventilation is got: ``windows open on two sides``."""


class Needs(Definition):
    """People, competence and room."""

    skills: Many[Id] = ()
    adults: Count = 1
    room: RoomNeeds = RoomNeeds()


class KitLine(Definition):
    """One line of the kit list. Totals for the class are computed, never typed."""

    item: Id
    per: Per
    count: Some = 1
    spare: Count = 0
    """Spares for the whole class."""
    amount: AnyAmount | None = None
    """For what is measured out rather than counted: how much for each."""
    may_be: AnyAmount | None = None
    """The range of that amount in which the practical still works, where the item does not say it."""
    allowance: AnyAmount | None = None
    """Extra for the whole class, for loss or a second try."""
    allowance_kept: Line | None = None
    """Where the allowance waits, when it does not come into the room: a room's id."""
    phase: Phase | None = None
    """The phase it is needed in, when it is not the whole practical."""
    made_here: YesNo = False
    """Made during the practical: it counts as what is in the room, and nobody has to order or fetch it."""
    note: Line | None = None


class SourceSlot(Definition):
    """A place for a source, and which of the register may fill it, the first choice first."""

    name: Line = "source"
    form: Literal["sealed", "generator", "unsealed", "object"] = "sealed"
    """The form the practical was written and approved for."""
    one_of: Annotated[Many[Id], Field(min_length=1)]


class Circuit(Definition):
    """What a supply feeds, through what, and what else stores charge in it."""

    supply: Id
    feeds: Many[Id]
    voltage: Line
    """The declared number that is the highest voltage used."""
    through: Line | None = None
    """The declared number that is the series resistance; left out when the supply is connected directly."""
    stores: Line | None = None
    """The declared number that is any further capacitance connected."""


class Release(Definition):
    """Gas let into the room: by what, how much in all or how fast."""

    item: Id
    phase: Phase = "run"
    rate: MassRate | None = None
    """How fast it turns to gas while it is used as the steps say."""
    may_be: MassRate | None = None
    """The range in which that rate lies, as trays, draught and pieces differ."""
    vented: Line | None = None
    """The declared number that is a mass of gas let off besides what the kit list holds."""


class Expectation(Definition):
    """What will be seen or measured: in words, as a declared number, or worked out for the day."""

    see: Line | None = None
    at: Line | None = None
    compute: Id | None = None
    given: dict[Line, Line] = {}
    """What it is worked from: slots, declared numbers or items, by the calculator's own words.

    Several numbers are named with commas between them.
    """
    show: Line | None = None
    within: Line | None = None
    """How far a good result may lie from it: ``15 %`` or ``a factor of two``."""
    note: Words | None = None
    source: Id | None = None

    @property
    def names_given(self) -> tuple[str, ...]:
        """Every name among what it is worked from, whatever the word it is given for."""
        return tuple(name.strip() for names in self.given.values() for name in names.split(","))


class Fault(Definition):
    """When it does not work: what is seen, why, and what to do.

    A fix that touches what a supply feeds is printed with the words that make it safe before it.
    """

    seen: Line
    cause: Line
    fix: Words
    touches: Many[Id] = ()
    common: YesNo = False


class Question(Definition):
    """A question for the class, with its answer."""

    question: Line
    answer: Words


class Misconception(Definition):
    """What pupils often say, and what is so."""

    says: Line
    really: Words


class HazardHere(Definition):
    """A hazard as it shows itself in this practical, and the controls used here."""

    hazard: Id
    here: Words
    controls: Annotated[tuple[Line, ...], Field(min_length=1)]


class Waste(Definition):
    """Something left over, and the only way it may go."""

    what: Id
    route: WasteRoute
    how: Words | None = None
    """What is done with it on that way."""
    by: Many[ActorName]
    never: Many[Line] = ()
    note: Words | None = None


class Trial(Definition):
    """Who tried the card out before it was approved."""

    by: Many[Id]
    on: Day


class Review(Definition):
    """Who wrote it, who approved it, when it was last read through and when it must be again."""

    version: Line
    last: Day
    written_by: Id
    approved_by: Id
    due: Day
    tried_out: Trial | None = None


class AllowedException(Definition):
    """A rule this practical may break for a time, out loud: printed on its page."""

    rule: Id
    reason: Words
    approved_by: Id
    on: Day
    expires: Day


class Practical(Entry):
    """One practical of the handbook."""

    shelf: ClassVar[str] = "practicals"

    title: Line
    aim: Line
    subject: Literal["physics", "chemistry", "biology"]
    topics: tuple[Line, ...]
    search: Many[Line] = ()
    """Words people type, misspelt or American."""
    ages: Annotated[
        Ages,
        from_text(_ages),
        WithJsonSchema({"type": "string", "pattern": f"^{_AGES.pattern}$", "examples": ["14 to 18"]}),
    ]
    led_by: ActorName
    pupils: Literal["watch", "take part", "not there"]
    needs: Needs
    lesson: Time
    """The steps of ``run`` must add up to this."""
    groups_of: Some | None = None
    where: dict[Phase, Many[Id]]
    """The rooms each phase may be done in."""

    numbers: dict[Line, Number] = {}
    kit: tuple[KitLine, ...] = ()
    sources: tuple[SourceSlot, ...] = ()
    circuits: tuple[Circuit, ...] = ()
    releases: tuple[Release, ...] = ()
    hazards: tuple[HazardHere, ...] = ()
    excludes: Many[Line] = ()
    """Who must not take part or come near, as the hazards here ask."""
    wear_note: Words | None = None
    """What to say about protective equipment, above all when none would help."""

    brief: Words | None = None
    """What to say to the class, at most 120 words."""
    stop_word: Line | None = None
    """The word at which everybody stops; the brief quotes it as ``{stop word}``."""
    prepare: tuple[Step, ...] = ()
    set_up: tuple[Step, ...] = ()
    run: Annotated[tuple[Step, ...], Field(min_length=1)]
    clear_up: tuple[Step, ...] = ()

    expect: tuple[Expectation, ...] = ()
    when_it_fails: tuple[Fault, ...] = ()
    ask: tuple[Question, ...] = ()
    misconceptions: tuple[Misconception, ...] = ()
    emergency: Many[Id] = ()
    waste: tuple[Waste, ...] = ()
    defer: Words | None = None
    """Where local rules or licensed practice come first."""
    see_also: Many[Id] = ()
    sources_read: Many[Id] = ()
    review: Review
    exceptions: tuple[AllowedException, ...] = ()

    def steps(self, phase: Phase) -> tuple[Step, ...]:
        """The steps of one phase."""
        steps: tuple[Step, ...] = getattr(self, phase)
        return steps

    def slot(self, name: str) -> SourceSlot | None:
        """The source slot of a name."""
        return next((slot for slot in self.sources if slot.name == name), None)

    @property
    def items(self) -> frozenset[str]:
        """The ids of everything in its kit list."""
        return frozenset(line.item for line in self.kit)
