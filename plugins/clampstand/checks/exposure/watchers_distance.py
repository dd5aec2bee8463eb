"""Watchers keep their distance from a source that is out of its box.

Why: twice the distance is a quarter of the dose, and it costs nothing. People obey the last distance they
were told, so every step that names one is held to the limit as well as the distance declared.

Wrong:
    source bench:
      run:
        5: {stand: {watchers: 1 m}}

Right:
    source bench:
      run:
        5: {stand: {watchers: 200 cm}}

Whose: the department's own rule in most places; the law limits the dose, not the distance.
"""

from collections.abc import Iterator

from clampstand.checks.distances import a_source_is_out, too_close
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity

ID = "watchers-distance"
SEVERITY = Severity.STOP


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every watchers' distance, declared or said while a source is out, against the strictest limit."""
    yield from too_close(lesson, "watchers", a_source_is_out, "watchers are {} from the source")
