"""Every number that is expected says how far a good result may lie from it.

Why: a bare number looks exact. A class that measures a tenth less takes it for a mistake, its own or the
handbook's, and nobody can say which.

Wrong:
    high tension bench:
      expect:
        1: {at: working voltage, within: (left out)}

Right:
    high tension bench:
      expect:
        1: {at: working voltage, within: 10 %}

Whose: common practice wherever anything is measured.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "tolerance-given"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.GUIDANCE, "a predicted value comes with its uncertainty")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every expectation of a declared or a computed number; a declared range says it by itself."""
    practical = lesson.practical
    for index, entry in enumerate(practical.expect):
        number = practical.numbers.get(entry.at or "")
        says_it = entry.within is not None or (
            number is not None and not number.value.is_single and not entry.compute
        )
        if (entry.at or entry.compute) and not says_it:
            value = f"{entry.at} ({number.value})" if number else str(entry.compute)
            yield Problem(
                practical.at("expect", index),
                f"{value} is expected and nobody says how near a good result comes to it",
                found="no tolerance",
                needed="within: 15 %, or a factor of two",
                mend="write within, as wide as the results of past classes lie",
                whose=RULE,
            )
