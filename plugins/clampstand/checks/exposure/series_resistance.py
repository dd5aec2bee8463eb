"""The safety resistance lets through no more than its limit, at all the voltage the supply can give.

Why: the resistance is what protects if the limiter in the supply fails. A slip of a prefix, kilohms for
megohms, makes it a thousand times too small, and nothing shows it.

Wrong:
    high tension bench:
      numbers:
        safety resistance: {value: 50 kΩ}

Right:
    high tension bench:
      numbers:
        safety resistance: {value: 25 MΩ}

Whose: the department's own rule, after the standards for touchable parts; the current is Ohm's law.
"""

from collections.abc import Iterator

from clampstand.calculators.circuits import series_current
from clampstand.calculators.worked import CannotWork
from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import dangerous_supplies
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import keeps, whose
from clampstand.model.practical import Circuit

ID = "series-resistance"
SEVERITY = Severity.STOP
LIMIT = "electrical.series-current"
OHM = Whose(Layer.PHYSICS, "a current is a voltage over a resistance")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every circuit of a dangerous supply that declares a series resistance."""
    for used, output in dangerous_supplies(lesson):
        for circuit in used.circuits:
            if circuit.through is not None:
                yield from _lets_through(lesson, circuit, output.current)


def _lets_through(lesson: Lesson, circuit: Circuit, current: str) -> Iterator[Problem]:
    limit = lesson.limit(LIMIT, current=current)
    spot = lesson.practical.at("numbers", circuit.through or "", "value")
    try:
        worked = series_current(circuit, lesson.practical, lesson.book)
    except CannotWork as reason:
        mend = "write the resistance, for example 50 MΩ"
        message = f"{circuit.through}: no current can be worked out"
        yield Problem(spot, message, str(reason), "a resistance", mend, OHM)
        return
    if limit is None or keeps(worked.value, limit):
        return
    inputs = ", ".join(f"{entry.name} {entry.value}" for entry in worked.inputs)
    yield Problem(
        spot,
        f"{circuit.through} lets through {worked.shown} from {circuit.supply}",
        found=f"{worked.shown} ({worked.formula}; {inputs})",
        needed=limit.in_words,
        mend="look at the prefix of the resistance; if it is right, fit a larger one",
        whose=whose(limit),
    )
