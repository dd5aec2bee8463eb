"""What rubs off: whose hands and which surfaces something is on, step by step."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from clampstand.checks.meeting import MOVES
from clampstand.checks.rule import Lesson
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
    """Every step with what is left on hands and surfaces. Gloves change nothing: they come off."""
    left: dict[str, dict[str, StepRef]] = {}
    for moment in lesson.moments:
        during = {who: dict(what) for who, what in left.items()}
        for item_id, places in _met(lesson, moment).items():
            on = [*(moment.step.doers if "hands" in places else ()), *(s for s in SURFACES if s in places)]
            for who in on:
                during.setdefault(who, {})[item_id] = moment.ref
        washed: set[str] = {s for s in SURFACES if s in moment.step.washes}
        washed |= moment.step.doers if "hands" in moment.step.washes else set()
        left = {who: what for who, what in during.items() if who not in washed}
        yield Unwashed(moment, during, left)


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
