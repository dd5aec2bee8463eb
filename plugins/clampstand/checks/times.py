"""How long lies between two steps of a practical."""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.model.step import Step
from clampstand.timeline import Moment, StepRef
from clampstand.units import Amount, Quantity, added_up


def timed_steps(lesson: Lesson) -> Iterator[tuple[Moment, Amount, StepRef]]:
    """Each step with the time it must begin within, and the last of the steps from whose end it runs."""
    named = {moment.step.name: place for place, moment in enumerate(lesson.moments) if moment.step.name}
    for place, moment in enumerate(lesson.moments):
        step = moment.step
        before = [named[name] for name in step.after if name in named and named[name] < place]
        if step.within is not None and before:
            yield moment, step.within, lesson.moments[max(before)].ref


def longest_between(lesson: Lesson, earlier: StepRef, later: StepRef) -> Quantity:
    """From the end of one step to the beginning of a later one, every step between at its longest.

    The time between two phases is not known and counts as none.
    """
    return added_up((moment.step.takes.high for moment in _between(lesson, earlier, later)), "min")


def shortest_between(lesson: Lesson, earlier: StepRef, later: StepRef) -> Quantity:
    """The same, every step between at its shortest."""
    return added_up((moment.step.takes.low for moment in _between(lesson, earlier, later)), "min")


def _between(lesson: Lesson, earlier: StepRef, later: StepRef) -> tuple[Moment, ...]:
    refs = [moment.ref for moment in lesson.moments]
    return lesson.moments[refs.index(earlier) + 1 : refs.index(later)]


_LASTS = re.compile(r"(?:\bfor|\b[Ww]ait) \{([^{}]*)\}")


def times_named(step: Step) -> list[str]:
    """The names by which a step's sentence says how long it lasts: ``wait {drying time}``."""
    return _LASTS.findall(step.do)
