"""What is measured is used: a later step builds on it.

Why: a result that nobody uses was measured for nothing, or the step that works something out of it does not
say so. Then nothing tells when the measurement is lost, or comes too late.

Wrong:
    source bench:
      run:
        7: {builds_on: background}

Right:
    source bench:
      run:
        7: {builds_on: [background, counts]}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "results-used"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what is measured is used")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every result of the run, where some later step only works things out.

    Where none does, the results are what the lesson was for.
    """
    used = {name for moment in lesson.moments for name in moment.step.builds_on}
    run = [moment for moment in lesson.moments if moment.ref.phase == "run"]
    reckons = [bool(moment.step.builds_on and not moment.step.measures) for moment in run]
    for place, moment in enumerate(run):
        for name in moment.step.measures:
            if name not in used and any(reckons[place + 1 :]):
                yield Problem(
                    lesson.spot(moment.ref, "measures"),
                    f"{moment.ref} measures {name}, and no step builds on it",
                    found=f"measures: {name}",
                    needed=f"builds_on: {name} in a step after it",
                    mend="write builds_on where it is worked out, plotted or talked about",
                    whose=RULE,
                )
