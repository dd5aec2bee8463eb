"""A step that plots, compares or works something out names the results it is worked out of.

Why: a result that comes too late, or was lost with a step, is missed only where the step that needs it says
so.

Wrong:
    cold bench:
      run:
        9: {do: Compare long tracks with short ones.}

Right:
    cold bench:
      run:
        9: {do: Compare long tracks with short ones., builds_on: tracks}

Whose: this handbook.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import Step

ID = "worked-out-of-results"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step names the results it needs")
_WORKS_OUT = re.compile(r"(?:plot|divide|work(?: \S+)? out|draw one over)\b", re.IGNORECASE)
_THINKS = re.compile(r"(?:compare|explain)\b", re.IGNORECASE)
"""Pupils do so with results; a teacher also explains the brief, and compares a number with the register."""
STAFF = frozenset({"teacher", "second adult", "technician"})


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step of the run whose sentence begins so, once something has been measured."""
    results: list[str] = []
    for moment in lesson.moments:
        step = moment.step
        asked = moment.ref.phase == "run" and not step.builds_on and _works_out(step)
        if results and asked:
            yield Problem(
                lesson.spot(moment.ref, "do"),
                f"{moment.ref} works something out, and its data do not say of what",
                found="no builds_on",
                needed=f"builds_on: one or more of {', '.join(results)}",
                mend="write builds_on with every result it needs",
                whose=RULE,
            )
        results += [name for name in step.measures if name not in results]


def _works_out(step: Step) -> bool:
    by_staff = set(step.by) <= STAFF
    return bool(_WORKS_OUT.match(step.do) or (not by_staff and _THINKS.match(step.do)))
