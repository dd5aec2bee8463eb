"""The energy left in a circuit is no more than a touch may let through.

Why: at high voltage little capacitance holds enough energy to throw somebody off a stool, or worse. The
current limit of a supply does nothing against it.

Wrong:
    kit:
      high-supply: {output: {greatest_voltage: 20 kV}}
    high tension bench:
      numbers:
        safety resistance: {value: 200 MΩ}

Right:
    kit:
      high-supply: {output: {greatest_voltage: 18 kV}}
    high tension bench:
      numbers:
        safety resistance: {value: 200 MΩ}

Whose: a standard for what may be touched.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.stored import over_the_limit
from clampstand.findings import Problem, Severity

ID = "stored-energy"
SEVERITY = Severity.STOP
LIMIT = "electrical.stored-energy"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each dangerous supply with everything connected to it, at the greatest voltage."""
    yield from over_the_limit(lesson, LIMIT, "energy")
