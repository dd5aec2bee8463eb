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

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.times import longest_between, timed_steps
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment
from clampstand.units import is_over, shown_best

_WITHIN = re.compile(r"\bwithin \{([^{}\n]{1,300})\}")
ID = "begun-in-time"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step begins within the time it gives itself")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each step with a time it must begin within, from the end of the last step it comes after."""
    for moment in lesson.moments:
        yield from _only_said(lesson, moment)
    for moment, within, last in timed_steps(lesson):
        passed = longest_between(lesson, last, moment.ref)
        if is_over(passed, within.high):
            yield Problem(
                lesson.spot(moment.ref, "within"),
                f"{moment.ref} begins {shown_best(passed, 'time', 3)} after {last}",
                found=f"{shown_best(passed, 'time', 3)} in the steps between",
                needed=f"within {within}",
                mend=f"move {moment.ref} nearer to {last}, or shorten the steps between",
                whose=RULE,
                related=((lesson.spot(last), "the time runs from the end of this step"),),
            )


def _only_said(lesson: Lesson, moment: Moment) -> Iterator[Problem]:
    """A time to begin within that only the sentence gives."""
    numbers = lesson.practical.numbers
    named = [n for n in _WITHIN.findall(moment.step.do) if n in numbers and numbers[n].value.kind == "time"]
    if named and moment.step.within is None and moment.step.after:
        yield Problem(
            lesson.spot(moment.ref, "do"),
            f"{moment.ref} begins within {named[0]} by its sentence, and its data do not say so",
            found="no within",
            needed=f"within: {numbers[named[0]].value}",
            mend="write within",
            whose=RULE,
        )
