"""The charge left in a circuit is no more than a touch may let through.

Why: a capacitor does not know of the supply's current limit. What is connected to the supply is charged to
its voltage, and all of it goes through a hand in a thousandth of a second.

Wrong:
    high tension bench:
      numbers:
        smoothing: {value: 20 nF, because: it steadies the needle}
      circuits:
        1: {stores: smoothing}

Right:
    high tension bench:
      numbers:
        smoothing: {value: 7 nF, because: it steadies the needle}
      circuits:
        1: {stores: smoothing}

Whose: a standard for what may be touched.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.stored import over_the_limit
from clampstand.findings import Problem, Severity

ID = "stored-charge"
SEVERITY = Severity.STOP
LIMIT = "electrical.stored-charge"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each dangerous supply with everything connected to it, at the greatest voltage."""
    yield from over_the_limit(lesson, LIMIT, "charge")
