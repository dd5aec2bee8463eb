"""Flammable vapour and what can light it, as the steps bring them into the room."""

from collections.abc import Iterator, Mapping

from clampstand.checks.rule import Lesson
from clampstand.timeline import Moment, Power, StepRef


def with_vapours(lesson: Lesson) -> Iterator[tuple[Moment, Mapping[str, StepRef]]]:
    """Every step with the flammable liquids that are open meanwhile, and since which step.

    What is handled is open, whether or not a step says so; it stays until it is taken away.
    """
    handled: dict[str, StepRef] = {}
    for moment in lesson.moments:
        new = [name for name in moment.step.handles if name not in handled]
        handled |= dict.fromkeys(new, moment.ref)
        still = {**handled, **moment.during.vapours}
        yield moment, {name: since for name, since in still.items() if _burns(lesson, name)}
        for name in moment.step.takes_away:
            handled.pop(name, None)


def ignition(lesson: Lesson, moment: Moment) -> dict[str, StepRef]:
    """Whatever can set vapour alight now: what is lit, and supplies that spark while they hold charge."""
    kit = lesson.book.kit
    burning = {item: since for item, since in moment.during.lit.items() if item in kit and kit[item].ignites}
    sparking = {
        item: supplied.since or moment.ref
        for item, supplied in moment.during.supplies.items()
        if item in kit and kit[item].ignites and supplied.power in (Power.ON, Power.CHARGED)
    }
    return burning | sparking


def _burns(lesson: Lesson, item_id: str) -> bool:
    item = lesson.book.kit.get(item_id)
    return item is not None and item.flammable_vapour
