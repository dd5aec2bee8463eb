"""A source is picked up from where it was set down, and goes back into its box from the tool that holds it.

Why: a source in a holder does not walk into its box. Where the steps pick up what was never set down, or
put back what was never picked up, one step is missing, and hands will fill the gap.

Wrong:
    source bench:
      run:
        6: {picks_up: (left out)}

Right:
    source bench:
      run:
        4: {do: Watch it., sets_down: (left out)}
        6: {picks_up: (left out)}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "picked-up-where-set-down"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "the steps say where each source is, and what holds it")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that moves a source that is out, against how it was left by the step before."""
    for moment in lesson.moments:
        for word, slot, fault, needed in _faults(lesson, moment):
            yield Problem(
                lesson.spot(moment.ref, word),
                f"{moment.ref} {word.replace('_', ' ')} {slot}, which {fault}",
                found=f"{slot} {fault}",
                needed=needed,
                mend="add the word that is missing, here or in a step before",
                whose=RULE,
                related=((lesson.spot(moment.before.out[slot].since), "taken out here"),),
            )


def _faults(lesson: Lesson, moment: Moment) -> Iterator[tuple[str, str, str, str]]:
    """Word, slot, what does not fit, and what would."""
    step, out = moment.step, moment.before.out
    for slot in step.picks_up:
        if slot in out and not out[slot].standing:
            yield "picks_up", slot, "was not set down", "sets_down in a step before"
    for word in ("sets_down", "puts_back"):
        for slot in getattr(step, word):
            stands = slot in out and out[slot].standing and slot not in step.picks_up
            if stands and (step.holds_with or not needs_tool(lesson, slot)):  # else it is moved by hand
                yield word, slot, "stands where it was set down", "picks_up first"
