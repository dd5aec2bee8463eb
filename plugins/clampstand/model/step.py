"""One step: who does what, for how long, and what it changes in the world."""

from typing import Literal

from pydantic import Field

from clampstand.model.base import AnyAmount, Day, Definition, Id, Line, Many, Time, Words, YesNo

ActorName = Literal["teacher", "technician", "second adult", "volunteer", "pupils", "adults", "everyone"]

ACTORS: dict[str, tuple[str, ...]] = {
    "teacher": ("teacher",),
    "technician": ("technician",),
    "second adult": ("second adult",),
    "volunteer": ("volunteer",),
    "pupils": ("pupils", "volunteer"),
    "adults": ("teacher", "technician", "second adult"),
    "everyone": ("teacher", "technician", "second adult", "volunteer", "pupils"),
}
"""The single persons, or kinds of person, each name stands for."""

DistanceEnds = Literal["hands", "watchers", "people", "electronics"]
"""Who or what a distance is kept from: hands and watchers from a source, people from live parts,
electronics from a generator."""


class StepWarning(Definition):
    """A warning printed directly before its step: what can hurt, how badly, how to avoid it."""

    signal: Literal["danger", "warning", "caution", "notice"]
    hazard: Line
    avoid: Line


class Step(Definition):
    """A step of a practical, a skill or an emergency.

    Besides its sentence a step says what it does to the things that can hurt. The order rules replay these
    changes; they never read the sentence.
    """

    do: Words
    by: Many[ActorName]
    takes: Time
    name: Line | None = None
    """A name other steps may refer to."""
    after: Many[Line] = ()
    """Named steps that must come before."""
    within: Time | None = None
    """The longest time that may pass since the last of those."""
    warn: StepWarning | None = None
    room: Id | None = None
    unattended: YesNo = False
    """Waiting time in which nobody needs to be there."""

    signs_out: Many[Line] = ()
    takes_out: Many[Line] = ()
    picks_up: Many[Line] = ()
    sets_down: Many[Line] = ()
    puts_back: Many[Line] = ()
    counts_back: Many[Line] = ()
    holds_with: Id | None = None

    switches_on: dict[Id, Line] = {}
    """Supply → the declared number that is its voltage."""
    switches_off: Many[Id] = ()
    waits: Time | None = None
    discharges: Many[Id] = ()
    discharges_with: Id | None = None
    touches: Many[Id] = ()

    puts_on: dict[ActorName, Many[Id]] = {}
    takes_off: dict[ActorName, Many[Id]] = {}
    puts_up: Many[Id] = ()
    """Barriers put between people and a hazard."""
    takes_down: Many[Id] = ()

    brings_in: Many[Id] = ()
    handles: Many[Id] = ()
    """Items met at arm's length or closer, out of their box: what their hazards ask for must be worn."""
    puts_in: Id | None = None
    """The container that what is handled goes into."""
    takes_away: Many[Id] = ()
    opens: Many[Id] = ()
    """Bottles and valves opened: what is in them comes out from this step on."""
    closes: Many[Id] = ()
    """Valves shut again. A bottle's vapour stays in the room until the bottle is taken away."""
    lights: Many[Id] = ()
    puts_out: Many[Id] = ()

    measures: Many[Line] = ()
    """What is counted or read. A result whose name begins with ``background`` is one without a source."""
    builds_on: Many[Line] = ()
    """Results of other steps this one needs."""
    fades_with: Line | None = None
    """The declared number that is the half-life of what is measured, from the end of the steps before it."""
    washes: Many[Literal["hands", "bench", "tray"]] = ()
    eats: YesNo = False
    class_: Literal["arrives", "leaves"] | None = Field(default=None, alias="class")
    stand: dict[DistanceEnds, Line] = {}
    """Who keeps which distance: the name of a declared number, or a quantity."""

    @property
    def doers(self) -> frozenset[str]:
        """The persons, or kinds of person, who do the step."""
        return frozenset(person for name in self.by for person in ACTORS[name])


class Number(Definition):
    """A number that safety or success depends on, declared once and quoted by name."""

    value: AnyAmount
    obeys: Id | None = None
    """The limit it must keep to."""
    because: Words | None = None
    """Why it has this value, when no limit sets it."""
    may_be: AnyAmount | None = None
    """For what is chosen, set or seen here: the range in which the practical still works."""
    lies_in: AnyAmount | None = None
    """For a figure that nobody here can choose: where it can lie at all. It needs its source."""
    source: Id | None = None
    """The citation it was taken from."""
    half_life_of: Id | None = None
    """The nuclide whose half-life it restates."""
    fades_with: Line | None = None
    """What decays meanwhile: for a time, the number that is the half-life; else the source it was found
    with."""
    on: Day | None = None
    """The day it was found with that source; left out, the reference date of the source."""
