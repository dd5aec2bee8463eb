"""The time within which a step must begin is of the size that the steps take, or is a declared number.

Why: a time that is ten times as long as what passes before the step asks for nothing. If a slip made it so, a
flask stands for an hour that should have been emptied at once.

Wrong:
    cold bench:
      run:
        3: {name: trays filled}
        7: {after: trays filled, within: 2 h}

Right:
    cold bench:
      run:
        3: {name: trays filled}
        7: {after: trays filled, within: 20 min}

Whose: this handbook: a bound that nothing comes near bounds nothing.
"""

from collections.abc import Iterator

from clampstand.checks.ranges import TOO_FAR
from clampstand.checks.rule import Lesson
from clampstand.checks.times import longest_between, timed_steps
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import Quantity, is_same, is_under, shown_best

ID = "within-is-held"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step's time to begin within is one that it can miss")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each step with a time it must begin within, from the end of the last step it comes after.

    Where no step lies between, nothing tells how long the time should be.
    """
    for moment, within, last in timed_steps(lesson):
        if _is_declared(lesson, within.high):
            continue
        passed = longest_between(lesson, last, moment.ref)
        if passed.magnitude > 0 and not is_under(within.high, TOO_FAR * passed):
            between = shown_best(passed, "time", 3)
            yield Problem(
                lesson.spot(moment.ref, "within"),
                f"{moment.ref} must begin within {within}, and {between} passes before it",
                found=f"within {within}",
                needed=f"less than {TOO_FAR} times {between}",
                mend="look for a slip; if it is meant, declare the time as a number, with its reason",
                whose=RULE,
            )


def _is_declared(lesson: Lesson, time: Quantity) -> bool:
    """Whether the practical declares this time as a number; one that obeys a limit is of something else."""
    return any(
        is_same(time, end)
        for number in lesson.practical.numbers.values()
        for end in (number.value.low, number.value.high)
        if number.value.kind == "time" and number.obeys is None
    )
