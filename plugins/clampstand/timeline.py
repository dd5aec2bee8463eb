"""Replays the steps: what is out, on, charged, worn, lit, open and present before, during and after each.

Order rules are statements about these states. They never read a sentence, and names of items mean nothing.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from enum import Enum
from typing import TypeVar

from clampstand.model.practical import PHASES, Practical
from clampstand.model.step import ACTORS, Step
from clampstand.units import Quantity, q

K = TypeVar("K")


@dataclass(frozen=True, slots=True)
class StepRef:
    """Which step: its phase and its number from 1."""

    phase: str
    number: int

    @property
    def route(self) -> tuple[str | int, ...]:
        """Its route in the definition."""
        return (self.phase, self.number - 1)

    def __str__(self) -> str:
        where = "" if self.phase in ("run", "steps") else f" of {self.phase.replace('_', ' ')}"
        return f"step {self.number}{where}"


class Power(Enum):
    """The state of a supply and of everything it feeds."""

    OFF = "off"
    ON = "on"
    CHARGED = "off, not yet discharged"
    DISCHARGED = "discharged"


@dataclass(frozen=True, slots=True)
class Supplied:
    """A supply's state, since which step, and how long has been waited since it was switched off."""

    power: Power
    since: StepRef | None = None
    waited: Quantity = field(default_factory=lambda: q("0 s"))


@dataclass(frozen=True, slots=True)
class Out:
    """A source out of its box: since which step, and the tool that holds it, if any does."""

    since: StepRef
    held_with: str | None
    standing: bool = False
    """Whether it was set down in a holder."""


Since = Mapping[str, StepRef]


@dataclass(frozen=True, slots=True)
class World:
    """The state of everything that can hurt, between two steps.

    Args:
        signed_out: source slots signed out of the register and not yet counted back.
        out: source slots out of their box.
        supplies: the supplies met so far.
        worn: person → item → the step it was put on.
        barriers: barriers standing.
        present: materials brought into the room.
        vapours: materials open in the room, giving off vapour.
        lit: flames and other things that burn.
        results: what has been measured.
        class_here: whether pupils are in the room.
    """

    signed_out: Since = field(default_factory=dict)
    out: Mapping[str, Out] = field(default_factory=dict)
    supplies: Mapping[str, Supplied] = field(default_factory=dict)
    worn: Mapping[str, Since] = field(default_factory=dict)
    barriers: Since = field(default_factory=dict)
    present: Since = field(default_factory=dict)
    vapours: Since = field(default_factory=dict)
    lit: Since = field(default_factory=dict)
    results: Since = field(default_factory=dict)
    class_here: bool = False

    def supply(self, item: str) -> Supplied:
        """The state of one supply; off where nobody has touched it."""
        return self.supplies.get(item, Supplied(Power.OFF))

    def wears(self, person: str) -> frozenset[str]:
        """What a person wears."""
        return frozenset(self.worn.get(person, {}))


@dataclass(frozen=True, slots=True)
class Moment:
    """One step with the world before it, while it is done, and after.

    ``during`` has everything the step brings about and nothing yet that it ends: gloves put on in a step
    protect in that step, and a flame put out in a step burns during it. ``handled`` is the world as hands
    meet apparatus in the step: switched off and discharged if the step does so first, not yet switched on.
    """

    ref: StepRef
    step: Step
    before: World
    handled: World
    during: World
    after: World


def replay(practical: Practical) -> tuple[Moment, ...]:
    """The moments of a practical, from the first step of preparing to the last of clearing up."""
    phases = [(phase, practical.steps(phase)) for phase in PHASES]
    return tuple(_replayed(phases, class_comes=practical.pupils != "not there"))


def replay_steps(steps: tuple[Step, ...], phase: str = "steps") -> tuple[Moment, ...]:
    """The moments of a single list of steps, as of a skill, done without a class."""
    return tuple(_replayed([(phase, steps)], class_comes=False))


def _replayed(phases: Iterable[tuple[str, tuple[Step, ...]]], *, class_comes: bool) -> Iterator[Moment]:
    world = World()
    for phase, steps in phases:
        world = replace(world, class_here=class_comes and phase == "run")
        for number, step in enumerate(steps, start=1):
            moment = _moment(StepRef(phase, number), step, world)
            yield moment
            world = moment.after


def _moment(ref: StepRef, step: Step, before: World) -> Moment:
    supplies = _made_safe(before.supplies, step, ref)
    handled = before if supplies is before.supplies else replace(before, supplies=supplies)
    during = _begun(handled, step, ref)
    return Moment(ref, step, before, handled, during, _ended(during, step))


def _made_safe(supplies: Mapping[str, Supplied], step: Step, ref: StepRef) -> Mapping[str, Supplied]:
    """Supplies after what the step switches off, waits for and discharges, in that order."""
    if not (step.switches_off or step.discharges) and step.waits is None:
        return supplies
    state = dict(supplies)
    for item in step.switches_off:
        if state.get(item, Supplied(Power.OFF)).power is Power.ON:
            state[item] = Supplied(Power.CHARGED, ref)
    if step.waits is not None:
        for item, supplied in state.items():
            if supplied.power is Power.CHARGED:
                state[item] = replace(supplied, waited=supplied.waited + step.waits.low)
    for item in step.discharges:
        if state.get(item, Supplied(Power.OFF)).power is Power.CHARGED:
            state[item] = replace(state[item], power=Power.DISCHARGED, since=ref)
    return state


def _begun(world: World, step: Step, ref: StepRef) -> World:
    """The world with everything the step brings about."""
    switched_on = {item: Supplied(Power.ON, ref) for item in step.switches_on}
    arriving = world.class_here or step.class_ == "arrives"
    return World(
        signed_out=_with(world.signed_out, step.signs_out, ref),
        out=_taken_out(world.out, step, ref),
        supplies={**world.supplies, **switched_on} if switched_on else world.supplies,
        worn=_dressed(world.worn, step, ref),
        barriers=_with(world.barriers, step.puts_up, ref),
        present=_with(world.present, step.brings_in, ref),
        vapours=_with(world.vapours, step.opens, ref),
        lit=_with(world.lit, step.lights, ref),
        results=_with(world.results, step.measures, ref),
        class_here=arriving,
    )


def _ended(world: World, step: Step) -> World:
    """The world without everything the step ends."""
    return World(
        signed_out=_without(world.signed_out, step.counts_back),
        out=_set_down(_without(world.out, step.puts_back), step),
        supplies=world.supplies,
        worn=_undressed(world.worn, step),
        barriers=_without(world.barriers, step.takes_down),
        present=_without(world.present, step.takes_away),
        vapours=_without(world.vapours, step.takes_away),
        lit=_without(world.lit, step.puts_out),
        results=world.results,
        class_here=world.class_here and step.class_ != "leaves",
    )


def _taken_out(out: Mapping[str, Out], step: Step, ref: StepRef) -> Mapping[str, Out]:
    """Sources out of their boxes with the step's own taking out and picking up."""
    if not (step.takes_out or step.picks_up):
        return out
    state = dict(out)
    for slot in step.takes_out:
        state[slot] = Out(ref, step.holds_with)
    for slot in step.picks_up:
        if slot in state:
            state[slot] = replace(state[slot], held_with=step.holds_with, standing=False)
    return state


def _set_down(out: Mapping[str, Out], step: Step) -> Mapping[str, Out]:
    """Sources out of their boxes once those the step sets down stand in their holders."""
    standing = {
        slot: replace(out[slot], held_with=None, standing=True) for slot in step.sets_down if slot in out
    }
    return {**out, **standing}


def _dressed(worn: Mapping[str, Since], step: Step, ref: StepRef) -> Mapping[str, Since]:
    state = dict(worn)
    for who, items in step.puts_on.items():
        for person in ACTORS[who]:
            state[person] = _with(state.get(person, {}), items, ref)
    return state


def _undressed(worn: Mapping[str, Since], step: Step) -> Mapping[str, Since]:
    state = dict(worn)
    for who, items in step.takes_off.items():
        for person in ACTORS[who]:
            state[person] = _without(state.get(person, {}), items)
    return state


def _with(state: Since, names: Collection[str], ref: StepRef) -> Since:
    """A state with more names in it; a name already there keeps the step it dates from."""
    return {**dict.fromkeys(names, ref), **state} if names else state


def _without(state: Mapping[str, K], names: Collection[str]) -> Mapping[str, K]:
    return {name: value for name, value in state.items() if name not in names} if names else state
