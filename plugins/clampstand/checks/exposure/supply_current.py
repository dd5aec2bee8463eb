"""No supply whose voltage can hurt can drive a current that can kill.

Why: names and looks of supplies are alike, and a supply of a few hundred volts that drives a hundred
milliamperes kills. Alternating current is dangerous at a tenth of that. What counts is what the supply can
drive into a short circuit at its bare terminals, as rated and as last measured.

Wrong:
    high tension bench:
      numbers:
        working voltage: {value: 300 V}
      kit:
        1: {item: strong-supply}
      circuits:
        1: {supply: strong-supply}
      prepare:
        1: {do: Look at it.}
      set_up:
        1: {do: Connect.}
      run:
        2: {switches_on: {high-supply: (left out), strong-supply: working voltage}}
        4: {switches_off: strong-supply, discharges: strong-supply}

Right:
    kit:
      high-supply: {output: {short_circuit_current: 4.9 mA}}

Whose: the department's own rule for direct current; standards set the lower limit for alternating current.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import Used, dangerous_supplies, kind_of_current, size_of
from clampstand.findings import Problem, Severity, Spot
from clampstand.limits import keeps, whose
from clampstand.model.kit import Output
from clampstand.units import Amount

ID = "supply-current"
SEVERITY = Severity.STOP
LIMIT = "electrical.current"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every dangerous supply of the practical: its kind as rated, or else each one owned as measured."""
    for used, output in dangerous_supplies(lesson):
        rated = output.short_circuit_current
        found = list(_too_much(lesson, used, output, rated, "can drive", used.item.at("output")))
        if found:
            yield from found
            continue
        for unit in lesson.book.units_of(used.id):
            if unit.status == "in use" and unit.measured_current is not None:
                what = f"was measured to drive ({unit.id})"
                yield from _too_much(lesson, used, output, unit.measured_current, what, unit.spot)


def _too_much(
    lesson: Lesson, used: Used, output: Output, current: Amount, what: str, written: Spot
) -> Iterator[Problem]:
    limit = lesson.limit(LIMIT, current=output.current)
    if limit is None or keeps(size_of(current), limit):
        return
    yield Problem(
        used.spot,
        f"{used.item.name} {what} {current} of {kind_of_current(output)}",
        found=f"{current}, {output.current}",
        needed=f"{limit.in_words}, {output.current}",
        mend="use a supply that is limited to less, and take this one off the kit list",
        whose=whose(limit),
        related=((written, "written here"),),
    )
