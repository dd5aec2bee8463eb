"""A source is held only while it is out of its box, and not while it stands in its holder.

Why: a step that holds a source before another takes it out, or after it is back, is done with an empty tool,
or with a source that nobody has signed for and no distance is kept from.

Wrong:
    source bench:
      run:
        2: {do: "Hold {source} over the cap."}

Right:
    source bench:
      run:
        3: {do: "Hold {source} over the cap."}

Whose: this handbook: the steps say where each source is, and what holds it.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.checks.verbs import held_in
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "in-hand-when-held"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "the steps say where each source is, and what holds it")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that holds a source, against where the sources are."""
    slots = [slot.name for slot in lesson.practical.sources if needs_tool(lesson, slot.name)]
    for moment in lesson.moments:
        named = [slot for slot in held_in(moment.step.do) if slot in slots]
        for slot in named:
            state = _not_held(moment, slot)
            if state:
                yield _problem(lesson, moment, slot, state)


def _not_held(moment: Moment, slot: str) -> str:
    """How a source is that a sentence holds; nothing where it is in hand."""
    out = moment.during.out.get(slot)
    return "is in its box" if out is None else "stands in its holder" if out.standing else ""


def _problem(lesson: Lesson, moment: Moment, slot: str, state: str) -> Problem:
    return Problem(
        lesson.spot(moment.ref, "do"),
        f"{moment.ref} holds {slot}, which {state}",
        found=f"{slot} {state}",
        needed=f"takes_out or picks_up: {slot} in it or before it",
        mend="move the step to where the source is in hand",
        whose=RULE,
    )
