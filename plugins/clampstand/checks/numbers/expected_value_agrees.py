"""A number that is expected agrees with what the handbook works out for it.

Why: a slip of a prefix is invisible to whoever made it. The meter is then set to the wrong range, the source
stands where nothing can reach, and the lesson was set up to fail.

Wrong:
    high tension bench:
      numbers:
        shock current: {value: 0.1 A, because: worked out}
      expect:
        2: {compute: series-current, at: shock current, within: 10 %}

Right:
    high tension bench:
      numbers:
        shock current: {value: 105 µA, because: worked out}
      expect:
        2: {compute: series-current, at: shock current, within: 10 %}

Whose: physics.
"""

from collections.abc import Iterator

from clampstand.calculators.worked import CannotWork, Worked
from clampstand.checks.rule import Lesson
from clampstand.checks.tolerance import widened
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.practical import Expectation
from clampstand.model.step import Number
from clampstand.units import Amount, is_over, is_under

ID = "expected-value-agrees"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "what is worked out and what is written are the same quantity")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every expectation with both a declared number and a calculator."""
    for entry, worked in lesson.sheet.numbers if lesson.is_whole else ():
        number = lesson.practical.numbers.get(entry.at or "")
        if number is None or isinstance(worked, CannotWork):
            continue
        of_kind = [each for each in worked if _is_of_kind(each, number.value)]
        if not any(_agrees(each, entry, number) for each in of_kind):
            alike = [each for each in worked if each.value.is_compatible_with(number.value.low)]
            yield _problem(lesson, entry, number, (of_kind or alike or worked)[0])


def _is_of_kind(worked: Worked, written: Amount) -> bool:
    """Whether both are the same kind of quantity. Kelvins may be either, degrees are never a difference."""
    if worked.kind == "temperature difference" and written.unit == "K":
        return True
    return worked.kind == written.kind


def _agrees(worked: Worked, entry: Expectation, number: Number) -> bool:
    low, high = widened(number.value, entry.within)
    return not is_under(worked.value, low) and not is_over(worked.value, high)


def _problem(lesson: Lesson, entry: Expectation, number: Number, worked: Worked) -> Problem:
    practical = lesson.practical
    index = practical.expect.index(entry)
    inputs = "; ".join(f"{each.name} {each.value}" for each in worked.inputs)
    return Problem(
        practical.at("numbers", entry.at or "", "value"),
        f"{entry.at} is {number.value}, and worked out it is {worked.shown}",
        found=f"{number.value}",
        needed=f"{worked.shown}, within {entry.within or 'its order of magnitude'}",
        mend=f"look for a slip in the unit or the prefix; worked from {inputs}",
        whose=RULE,
        related=((practical.at("expect", index), "it is expected here"),),
    )
