"""What is to be worked out can be worked out.

Why: a page that promises a number and has none leaves its reader to guess one.

Wrong:
    high tension bench:
      expect:
        2: {compute: series-curent, within: 10 %}

Right:
    high tension bench:
      expect:
        2: {compute: series-current, within: 10 %}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.calculators import CALCULATORS
from clampstand.calculators.sheet import work_out
from clampstand.calculators.worked import CannotWork
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "expectation-computable"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a number that is promised is worked out")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every expectation that asks for a calculator."""
    practical = lesson.practical
    for entry, worked in work_out(practical, lesson.book, CALCULATORS).numbers:
        if isinstance(worked, CannotWork):
            known = entry.compute in CALCULATORS
            yield Problem(
                practical.at("expect", practical.expect.index(entry), "given" if entry.given else "compute"),
                f"{entry.compute} cannot be worked out: {worked}",
                found=f"compute: {entry.compute}",
                needed="everything it is worked out from" if known else f"one of {', '.join(CALCULATORS)}",
                mend="write what is missing, or leave the entry out",
                whose=RULE,
            )
