"""A step that must follow soon does.

Why: a base that is cooled long before there is vapour above it grows frost, and a sample that waits has
decayed. Nothing looks wrong; there is only nothing to see.

Wrong:
    cold bench:
      run:
        3: {name: trays filled}
        7: {after: trays filled, within: 5 min}

Right:
    cold bench:
      run:
        3: {name: trays filled}
        7: {after: trays filled, within: 8 min}

Whose: this handbook: a practical that says how long a step may wait keeps to it.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.times import longest_between
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import is_over, shown_best

ID = "begun-in-time"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step begins within the time it gives itself")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each step with a time it must begin within, from the end of the last step it comes after."""
    named = {moment.step.name: place for place, moment in enumerate(lesson.moments) if moment.step.name}
    for place, moment in enumerate(lesson.moments):
        step = moment.step
        before = [named[name] for name in step.after if name in named and named[name] < place]
        if step.within is None or not before:
            continue
        last = lesson.moments[max(before)].ref
        passed = longest_between(lesson, last, moment.ref)
        if is_over(passed, step.within.high):
            yield Problem(
                lesson.spot(moment.ref, "within"),
                f"{moment.ref} begins {shown_best(passed, 'time', 3)} after {last}",
                found=f"{shown_best(passed, 'time', 3)} in the steps between",
                needed=f"within {step.within}",
                mend=f"move {moment.ref} nearer to {last}, or shorten the steps between",
                whose=RULE,
                related=((lesson.spot(last), "the time runs from the end of this step"),),
            )
