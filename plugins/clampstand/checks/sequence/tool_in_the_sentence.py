"""A sentence that moves a source does not do it by hand.

Why: people do what the sentence says. Where it speaks of fingers and the data of forceps, every rule is
content, and a finger on a source gets four hundred times the dose rate at 100 mm.

Wrong:
    source bench:
      run:
        3: {do: Take it out with two fingers.}

Right:
    source bench:
      run:
        3: {do: "Take it out, never by hand."}

Whose: the department's own rule.
"""

import re
from collections.abc import Iterator

from clampstand.checks.meeting import MOVES
from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "tool-in-the-sentence"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.LOCAL, "no hand touches a source")
_BY_HAND = re.compile(
    r"(?<!\bnot )(?<!\bnever )\b(?:by hand"
    r"|with (?:your|the|two|three|bare|a|both)(?: (?:bare|two|own))? (?:fingers?|hands?))\b",
    re.IGNORECASE,
)


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that moves a source that no hand may touch."""
    for moment in lesson.moments:
        step, said = moment.step, _BY_HAND.search(moment.step.do)
        moved = [slot for word in MOVES for slot in getattr(step, word) if needs_tool(lesson, slot)]
        if said and moved:
            yield Problem(
                lesson.spot(moment.ref, "do"),
                f"{moment.ref} moves {moved[0]}, and its sentence says {said[0]}",
                found=said[0],
                needed=f"{{{step.holds_with}}} in the sentence" if step.holds_with else "a tool",
                mend="name the tool in the sentence",
                whose=RULE,
            )
