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
from clampstand.checks.tolerance import is_a_temperature
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "tolerance-given"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.GUIDANCE, "a predicted value comes with its uncertainty")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every expectation of a declared or a computed number; a declared range says it by itself.

    A tolerance in degrees Celsius is a temperature, and the arithmetic with it is hundreds of kelvins off.
    """
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
        elif entry.within is not None and is_a_temperature(entry.within):
            yield Problem(
                practical.at("expect", index, "within"),
                f"a good result comes within {entry.within}, which is a temperature and no difference",
                found=entry.within,
                needed="a difference in K, a part in %, or a factor",
                mend="write how far off it may be in K",
                whose=RULE,
            )
