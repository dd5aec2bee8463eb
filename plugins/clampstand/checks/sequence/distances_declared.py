"""While a source is out, it is said how far hands and watchers keep from it.

Why: a distance that nobody wrote down is chosen by whoever pushes to the front. Nothing can be checked, put
on the card or taped on the floor.

Wrong:
    source bench:
      numbers:
        watchers' distance: (left out)
      run:
        3: {stand: {watchers: (left out)}}

Right:
    source bench:
      numbers:
        watchers' distance: (left out)
      run:
        3: {stand: {watchers: 2 m}}

Whose: this handbook: what is not declared cannot be checked.
"""

from collections.abc import Iterator

from clampstand.checks.distances import LIMITED, declared
from clampstand.checks.rule import Lesson
from clampstand.checks.sources import Outing, needs_tool, outings
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import whose
from clampstand.model.step import DistanceEnds
from clampstand.timeline import Moment

ID = "distances-declared"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "distances from a source are declared")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The first step with a source out in which a distance matters and none has been said."""
    for ends in ("hands", "watchers"):
        if declared(lesson, ends):
            continue
        for outing in outings(lesson):
            matters = _first_that_matters(lesson, outing, ends)
            if matters is not None and not _said_by(lesson, matters, ends):
                limit = lesson.limit(LIMITED[ends])
                yield Problem(
                    lesson.spot(matters.ref),
                    f"{matters.ref} has {outing.slot} out, and nothing says how far {ends} keep from it",
                    found="no distance",
                    needed=limit.in_words if limit else "a distance",
                    mend=f"declare a number that obeys {LIMITED[ends]} and name it under stand",
                    whose=whose(limit) if limit else RULE,
                )
                break


def _first_that_matters(lesson: Lesson, outing: Outing, ends: DistanceEnds) -> Moment | None:
    if ends == "hands":
        return outing.moments[0] if needs_tool(lesson, outing.slot) else None
    return next((moment for moment in outing.moments if moment.during.class_here), None)


def _said_by(lesson: Lesson, moment: Moment, ends: DistanceEnds) -> bool:
    """Whether a step of the phase, up to this one, names the distance."""
    of_phase = (each for each in lesson.moments if each.ref.phase == moment.ref.phase)
    return any(ends in each.step.stand for each in of_phase if each.ref.number <= moment.ref.number)
