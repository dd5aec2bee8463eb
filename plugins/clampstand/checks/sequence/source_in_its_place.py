"""A source is moved only while it is out, taken out only once, and counted back only when it is in its box.

Why: a count with the box still empty says that everything is safe when it is not. A step that moves what is
in its box, or takes out what is out, shows that a step is missing or in the wrong place.

Wrong:
    source bench:
      run:
        5: {counts_back: source}
        6: {counts_back: (left out)}

Right:
    source bench:
      run:
        6: {counts_back: source}

Whose: the department's own rule; the duty to account for sources is law in many places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "source-in-its-place"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "the steps say where each source is at any moment")
NEEDS_IT_OUT = ("picks_up", "sets_down", "puts_back")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that moves or counts a source, against where the source is by then."""
    for moment in lesson.moments:
        for how, slot, fault, needed in _faults(moment):
            yield Problem(
                lesson.spot(moment.ref, how),
                f"{moment.ref} {how.replace('_', ' ')} {slot}, which {fault}",
                found=f"{slot} {fault}",
                needed=needed,
                mend="put the steps in the order things are done, or add the step that is missing",
                whose=RULE,
            )


def _faults(moment: Moment) -> Iterator[tuple[str, str, str, str]]:
    step = moment.step
    for slot in step.takes_out:
        if slot in moment.before.out:
            yield "takes_out", slot, f"is out since {moment.before.out[slot].since}", "put back first"
    for how in NEEDS_IT_OUT:
        for slot in getattr(step, how):
            if slot not in moment.during.out:
                yield how, slot, "is in its box", "taken out first"
    for slot in step.counts_back:
        if slot in moment.after.out:
            yield "counts_back", slot, "is still out of its box", "put back first"
