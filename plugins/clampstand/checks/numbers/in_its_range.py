"""A number lies in the range that it says it may lie in.

Why: whoever sets up a practical needs to know how far off is still fine, and whoever changes a number needs
to know when it no longer is. A slip of a figure or of a prefix then stands beside the range it has left.

Wrong:
    high tension bench:
      numbers: {gap: {value: 30 mm, may_be: 2 mm to 5 mm, because: common practice}}

Right:
    high tension bench:
      numbers: {gap: {value: 0.3 cm, may_be: 2 mm to 5 mm, because: common practice}}

Whose: this handbook: what is written beside a number holds for it.
"""

from collections.abc import Iterator

from clampstand.checks.ranges import lies_in, ranged
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "in-its-range"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a number lies in its own range")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every declared number and every amount of the kit list that says its range."""
    practical = lesson.practical
    for each in ranged(lesson):
        if not lies_in(each.value, each.range):
            yield Problem(
                practical.at(*each.route),
                f"{each.name} is {each.value}, and {each.of_range[-1]} says {each.range}",
                found=str(each.value),
                needed=str(each.range),
                mend="look for a slip in the number or its unit; or change the range, if that is wrong",
                whose=RULE,
                related=((practical.at(*each.of_range), "its range"),),
            )
