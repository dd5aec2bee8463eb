"""Hands keep their distance from a source that is out of its box.

Why: dose to a hand falls with the square of the distance; 5 mm instead of 100 mm is four hundred times the
dose rate. The distance declared, and every step that names its own, must keep to the limit.

Wrong:
    source bench:
      numbers:
        hand distance: {value: 50 mm}

Right:
    source bench:
      numbers:
        hand distance: {value: 0.10 m}

Whose: the department's own rule in most places; the law limits the dose, not the distance.
"""

from collections.abc import Iterator
from functools import partial

from clampstand.checks.distances import a_tool_holds_a_source, too_close
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity

ID = "hand-to-source-distance"
SEVERITY = Severity.STOP


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every hand distance, declared or said while a source that needs a tool is out, against the limit."""
    matters = partial(a_tool_holds_a_source, lesson)
    yield from too_close(lesson, "hands", matters, "hands are {} from the source")
