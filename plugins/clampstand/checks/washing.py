"""What rubs off: whose hands and which surfaces something is on, step by step."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from clampstand.checks.meeting import MOVES, met_in
from clampstand.checks.rule import Lesson
from clampstand.model.step import ACTORS
from clampstand.timeline import Moment, StepRef

SURFACES = ("bench", "tray")

Left = Mapping[str, Mapping[str, StepRef]]
"""Person or surface → what is on it → the last step that put it there."""


@dataclass(frozen=True, slots=True)
class Unwashed:
    """A step with what is on hands and surfaces: while it is done, and when it is over."""

    moment: Moment
    during: Left
    after: Left


def unwashed(lesson: Lesson) -> Iterator[Unwashed]:
    """Every step with what is left on hands and surfaces.

    Gloves keep nothing from the hands: they come off. What is worn against something on hands or body leaves
    it on the hands that take it off.
    """
    left: dict[str, dict[str, StepRef]] = {}
    soiled: dict[tuple[str, str], set[str]] = {}
    """Person and what is worn → what it has met."""
    for moment in lesson.moments:
        during = {who: dict(what) for who, what in left.items()}
        for item_id, places in _met(lesson, moment).items():
            on = [*(moment.step.doers if "hands" in places else ()), *(s for s in SURFACES if s in places)]
            for who in on:
                during.setdefault(who, {})[item_id] = moment.ref
            for garment in _worn_against(lesson, moment, item_id) if "hands" in places else ():
                soiled.setdefault(garment, set()).add(item_id)
        washed: set[str] = {s for s in SURFACES if s in moment.step.washes}
        for garment in _taken_off(moment):
            met = dict.fromkeys(soiled.pop(garment, ()), moment.ref)
            during.setdefault(garment[0], {}).update(met)
        washed |= moment.step.doers if "hands" in moment.step.washes else set()
        left = {who: what for who, what in during.items() if what and who not in washed}
        yield Unwashed(moment, during, left)


def _worn_against(lesson: Lesson, moment: Moment, name: str) -> Iterator[tuple[str, str]]:
    """What those who do a step wear on hands and body against what a thing in it does."""
    kit = lesson.book.kit
    garments = [
        (person, item_id, worn.against)
        for person in moment.step.doers
        for item_id in moment.during.worn.get(person, ())
        if item_id in kit and (worn := kit[item_id].worn) is not None and worn.on in ("hands", "body")
    ]
    if not garments:
        return
    asked = {worn.against for met in met_in(lesson, moment) if met.what == name for worn in met.hazard.worn}
    yield from ((person, item_id) for person, item_id, against in garments if asked & set(against))


def _taken_off(moment: Moment) -> Iterator[tuple[str, str]]:
    for who, items in moment.step.takes_off.items():
        for person in ACTORS[who]:
            yield from ((person, item) for item in items)


def _met(lesson: Lesson, moment: Moment) -> dict[str, frozenset[str]]:
    """What a step meets that leaves something behind, and what must be washed after it."""
    step, kit = moment.step, lesson.book.kit
    items = dict.fromkeys((*step.handles, *step.opens, *step.touches))
    met = {name: frozenset(kit[name].needs_washing) for name in items if name in kit}
    slots = dict.fromkeys(slot for how in MOVES for slot in getattr(step, how))
    for slot in slots:
        written_for = lesson.practical.slot(slot)
        if written_for is not None and written_for.form != "sealed":
            met[slot] = frozenset({"hands"})
    return {name: places for name, places in met.items() if places}
