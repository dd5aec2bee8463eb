"""The steps of the run add up to the lesson.

Why: a lesson that runs over is hurried at its end, and its end is where sources are counted back and supplies
are discharged. A lesson with minutes nobody planned is a lesson with a step missing.

Wrong:
    source bench:
      lesson: 25 min

Right:
    source bench:
      lesson: 0.5 h

Whose: this handbook: the running clock on the page and the card rests on it.
"""

from collections.abc import Iterator

from clampstand.calculators.clock import phase_length
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import is_over, is_same

ID = "steps-fit-the-lesson"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "the minutes of the run's steps add up to the lesson")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The sum of the run's minutes, each at its longest, against the time given."""
    practical = lesson.practical
    total = phase_length(practical, "run").to("min")
    if is_same(total, practical.lesson.value):
        return
    minutes = round(total.magnitude, 1)
    over = is_over(total, practical.lesson.value)
    yield Problem(
        practical.at("lesson"),
        f"the steps of the run take {minutes:g} min and the lesson has {practical.lesson}",
        found=f"{minutes:g} min in {len(practical.run)} steps",
        needed=str(practical.lesson),
        mend="shorten or move steps" if over else "give the missing minutes to a step, or shorten the lesson",
        whose=RULE,
    )
