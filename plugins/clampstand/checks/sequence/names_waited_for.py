"""A step that has a name is waited for by another.

Why: a step gets a name so that another can come after it. A name that nobody waits for tells that the order
was written down at one end only, and at that end nothing holds it.

Wrong:
    cold bench:
      run:
        3: {name: snow is in}

Right:
    cold bench:
      run:
        3: {name: snow is in}
        5: {after: snow is in}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "names-waited-for"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "an order of steps is written at both ends")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every name of a step, against what other steps come after."""
    waited_for = {name for moment in lesson.moments for name in moment.step.after}
    for moment in lesson.moments:
        if moment.step.name is not None and moment.step.name not in waited_for:
            yield Problem(
                lesson.spot(moment.ref, "name"),
                f"{moment.ref} is called {moment.step.name}, and no step comes after that",
                found=f"name: {moment.step.name}",
                needed=f"a step with after: {moment.step.name}",
                mend="write after in the step that must wait, or take the name out",
                whose=RULE,
            )
