"""What is expected is not a hundred times more or less than anything worked out of its kind.

Why: a current in microamperes where nanoamperes flow sets the meter to the wrong range, and looks as good as
the right one. Where no calculator gives the very number, those of its kind still tell its size.

Wrong:
    high tension bench:
      numbers: {usual current: {value: 30 mA to 60 mA, because: what past classes read}}
      expect:
        2: {compute: series-current, within: 10 %}
        3: {at: usual current, within: a factor of two, source: house-rules}

Right:
    high tension bench:
      numbers: {usual current: {value: 30 µA to 60 µA, because: what past classes read}}
      expect:
        2: {compute: series-current, within: 10 %}
        3: {at: usual current, within: a factor of two, source: house-rules}

Whose: physics.
"""

from collections.abc import Iterator

from clampstand.calculators.worked import CannotWork, Worked
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import Amount, Quantity, is_over

ID = "like-size"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.PHYSICS, "quantities of one kind in one experiment are of like size")
KINDS = frozenset({"current", "voltage", "charge", "energy", "activity", "dose", "dose rate"})
"""Kinds of which one experiment has few; of lengths and times it has some of every size."""
APART = 100
"""Less than the step from one prefix to the next."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every expectation of a declared number that no calculator is asked for, against what was worked out."""
    practical, alike = lesson.practical, _worked_by_kind(lesson)
    for index, entry in enumerate(practical.expect):
        number = practical.numbers.get(entry.at or "")
        if number is None or entry.compute or number.value.kind not in alike:
            continue
        worked = alike[number.value.kind]
        if all(_far_apart(each.value, number.value) for each in worked):
            yield Problem(
                practical.at("numbers", entry.at or "", "value"),
                f"{entry.at} is {number.value}, and what is worked out here is {worked[0].shown}",
                found=str(number.value),
                needed=f"within a factor of {APART} of one of {', '.join(each.shown for each in worked)}",
                mend="look for a slip in the unit or the prefix",
                whose=RULE,
                related=((practical.at("expect", index), "it is expected here"),),
            )


def _worked_by_kind(lesson: Lesson) -> dict[str, list[Worked]]:
    """Kind → what is worked out of it; only kinds of which an experiment has few."""
    by_kind: dict[str, list[Worked]] = {}
    for _, worked in lesson.sheet.numbers if lesson.is_whole else ():
        for each in () if isinstance(worked, CannotWork) else worked:
            if each.kind in KINDS:
                by_kind.setdefault(each.kind, []).append(each)
    return by_kind


def _far_apart(worked: Quantity, written: Amount) -> bool:
    sizes = abs(written.low), abs(written.high)
    return all(is_over(abs(worked), APART * size) for size in sizes) or all(
        is_over(size, APART * abs(worked)) for size in sizes
    )
