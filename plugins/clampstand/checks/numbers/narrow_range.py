"""A range is narrow enough to find a slip: neither end is ten times the number or a tenth of it.

Why: a range from a hundredth to a hundred times holds for nearly everything. It looks as if somebody had
thought about the number, and no slip of a figure is ever found by it.

Wrong:
    high tension bench:
      numbers: {gap: {value: 3 mm, may_be: 0.3 mm to 5 mm, because: common practice}}

Right:
    high tension bench:
      numbers: {gap: {value: 3 mm, may_be: 0.4 mm to 5 mm, because: common practice}}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.ranges import TOO_FAR, far_apart, lies_in, ranged
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "narrow-range"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a range is narrower than a slip of one figure")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every range that holds its number. Degrees count from somewhere else than nought and are left out."""
    practical = lesson.practical
    for each in ranged(lesson):
        if each.range.kind == "temperature" or not lies_in(each.value, each.range):
            continue
        if far_apart(each.range, each.value):
            yield Problem(
                practical.at(*each.of_range),
                f"{each.name} is {each.value}, and its range {each.range} reaches {TOO_FAR} times as far",
                found=str(each.range),
                needed=f"more than a tenth of {each.value}, and less than ten times as much",
                mend="write the range in which the practical has been seen to work",
                whose=RULE,
                related=((practical.at(*each.route), "the number"),),
            )
