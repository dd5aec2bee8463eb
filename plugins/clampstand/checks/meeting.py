"""Who meets what: items handled, opened, lit or touched, sources moved, and what goes on around everybody."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Spot
from clampstand.model.hazard import Hazard
from clampstand.timeline import Moment, Power, StepRef

MEETS = ("handles", "opens", "closes", "touches", "lights", "puts_out")
"""What brings a person within reach of an item's hazards."""
MOVES = ("takes_out", "picks_up", "sets_down", "puts_back")
"""What brings a person within reach of a source."""


@dataclass(frozen=True, slots=True)
class Met:
    """One hazard met in a step: of what, how, and by which of the step's words if by one.

    ``near`` is whether it is at hand; otherwise it goes on in the room, as a flame that burns does.
    """

    what: str
    how: str
    hazard: Hazard
    word: str | None = None
    near: bool = True

    def spot(self, lesson: Lesson, moment: Moment) -> Spot:
        """Where that is written."""
        return lesson.spot(moment.ref, self.word) if self.word else lesson.spot(moment.ref)


def met_in(lesson: Lesson, moment: Moment) -> Iterator[Met]:
    """The hazards of everything that hands meet in a step."""
    for how in MEETS:
        for item_id in getattr(moment.step, how):
            for hazard in _of_item(lesson, item_id):
                yield Met(item_id, how, hazard, how)
    for how in MOVES:
        for slot in getattr(moment.step, how):
            for hazard in _of_slot(lesson, slot):
                yield Met(slot, how.replace("_", " "), hazard, how)


def around(lesson: Lesson, going_on: Mapping[str, StepRef]) -> Iterator[Met]:
    """The hazards of everything that goes on in a step, whoever does the step."""
    for item_id, since in going_on.items():
        for hazard in _of_item(lesson, item_id):
            yield Met(item_id, f"goes on since {since} with", hazard, near=False)


def with_what_goes_on(lesson: Lesson) -> Iterator[tuple[Moment, Mapping[str, StepRef]]]:
    """Every step with what burns, is switched on or streams out meanwhile, and since when."""
    streaming: dict[str, StepRef] = {}
    for moment in lesson.moments:
        step = moment.step
        now = streaming | dict.fromkeys((name for name in step.opens if name not in streaming), moment.ref)
        on = {
            name: supplied.since or moment.ref
            for name, supplied in moment.during.supplies.items()
            if supplied.power is Power.ON
        }
        yield moment, {**now, **moment.during.lit, **on}
        ended = {*step.closes, *step.takes_away}
        streaming = {name: since for name, since in now.items() if name not in ended}


def _of_item(lesson: Lesson, item_id: str) -> Iterator[Hazard]:
    item = lesson.book.kit.get(item_id)
    yield from _known(lesson, item.hazards if item else ())


def _of_slot(lesson: Lesson, slot: str) -> Iterator[Hazard]:
    named = dict.fromkeys(name for source in lesson.candidates(slot) for name in source.hazards)
    yield from _known(lesson, tuple(named))


def _known(lesson: Lesson, names: tuple[str, ...]) -> Iterator[Hazard]:
    return (lesson.book.hazards[name] for name in names if name in lesson.book.hazards)
