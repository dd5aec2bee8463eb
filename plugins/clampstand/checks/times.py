"""How long lies between two steps of a practical."""

import re

from clampstand.checks.rule import Lesson
from clampstand.model.step import Step
from clampstand.timeline import Moment, StepRef
from clampstand.units import Quantity, added_up


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
