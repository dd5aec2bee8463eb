"""Everybody but the one at the supply keeps away from live parts.

Why: a spark jumps, a sleeve touches, somebody points. Distance is what keeps a shock from anybody who is not
looking at the dial.

Wrong:
    high tension bench:
      numbers:
        people's distance: {value: 0.4 m}

Right:
    high tension bench:
      numbers:
        people's distance: {value: 500 mm}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.distances import a_supply_is_on, too_close
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity

ID = "people-to-live-distance"
SEVERITY = Severity.STOP


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every distance to live parts, declared or said while a supply is on, against the strictest limit."""
    yield from too_close(lesson, "people", a_supply_is_on, "people are {} from live parts")
