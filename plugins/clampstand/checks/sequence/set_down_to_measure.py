"""Nobody measures with a source in the forceps, unless the step says that it is held.

Why: a source that is held moves, tires the hand and takes both eyes. Where a count comes between picking it
up and putting it back, or before it is set down, two steps stand in the wrong order, and the hand waits.

Wrong:
    source bench:
      run:
        4: {sets_down: (left out), do: Watch it.}
        5: {do: Count for ten minutes.}
        6: {picks_up: (left out)}

Right:
    source bench:
      run:
        4: {sets_down: (left out), do: Watch it.}
        5: {do: Count for ten minutes., holds_with: long-forceps}
        6: {picks_up: (left out)}

Whose: common practice: a source is in the tool only while it is moved or shown.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment, StepRef

ID = "set-down-to-measure"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a source stands in its holder while something else is done")
_IN_HAND = re.compile(
    r"\b(?:source|(?:hold|bring|keep|move|point|show)s? (?:it|them)|with it)\b", re.IGNORECASE
)


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that measures, against the sources that a tool has held since a step before."""
    for moment in lesson.moments:
        for slot, since in _in_the_tool(lesson, moment):
            yield Problem(
                lesson.spot(moment.ref, "measures"),
                f"{moment.ref} measures {', '.join(moment.step.measures)} while {slot} is held in the tool",
                found=f"{slot} in hand",
                needed=f"sets_down: {slot} before it, or holds_with where it is measured in the hand",
                mend="move the step, or write with what the source is held",
                whose=RULE,
                related=((lesson.spot(since), "taken out here"),),
            )


def _in_the_tool(lesson: Lesson, moment: Moment) -> Iterator[tuple[str, StepRef]]:
    """The sources that a step that measures finds in a tool and says nothing of."""
    step = moment.step
    if not step.measures or step.holds_with:
        return
    said = _IN_HAND.search(step.do)
    moved = {*step.takes_out, *step.picks_up, *step.sets_down, *step.puts_back}
    for slot, out in moment.before.out.items():
        held = not out.standing and slot not in moved and needs_tool(lesson, slot)
        if held and not said and f"{{{slot}}}" not in step.do:
            yield slot, out.since
