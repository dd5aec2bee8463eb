"""A step that takes a source out, or switches on what can hurt, says how far everybody keeps.

Why: a distance holds until another is said. Where a danger begins anew and nothing is said, the distance is
one that was meant for something else, or nobody remembers it.

Wrong:
    source bench:
      run:
        3: {stand: {watchers: (left out)}}

Right:
    source bench:
      run:
        3: {stand: {watchers: 200 cm}}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.distances import declared
from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.checks.supplies import is_dangerous
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import DistanceEnds
from clampstand.timeline import Moment

ID = "distance-said-again"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "where a danger begins, the distance from it is said")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step in which a danger begins, against what it and the steps before it in its phase say."""
    phase, said = "", set[str]()
    for moment in lesson.moments:
        said = said if moment.ref.phase == phase else set()
        phase = moment.ref.phase
        said |= moment.step.stand.keys()
        for ends in _matters(lesson, moment):
            kept = declared(lesson, ends) if ends not in said else ()
            if kept:
                yield Problem(
                    lesson.spot(moment.ref),
                    f"{moment.ref} {_begins(moment)} and does not say how far {ends} keep",
                    found=f"no {ends} under stand",
                    needed=f"stand: {{{ends}: {kept[0].where}}}",
                    mend=f"name {kept[0].where} under stand",
                    whose=RULE,
                    related=((kept[0].spot, "declared here"),),
                )


def _matters(lesson: Lesson, moment: Moment) -> Iterator[DistanceEnds]:
    step, watched = moment.step, moment.during.class_here
    if any(needs_tool(lesson, slot) for slot in step.takes_out):
        yield "hands"
    if step.takes_out and watched:
        yield "watchers"
    if watched and any(is_dangerous(lesson, supply) for supply in step.switches_on):
        yield "people"


def _begins(moment: Moment) -> str:
    things = moment.step.takes_out or tuple(moment.step.switches_on)
    return f"{'takes out' if moment.step.takes_out else 'switches on'} {', '.join(things)}"
