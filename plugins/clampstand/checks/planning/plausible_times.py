"""A step takes as long as a step can take, and no less than it waits.

Why: minutes written for seconds ruin the plan of a lesson, and a wait that the step has no time for is cut
short by whoever is in a hurry.

Wrong:
    limits: {planning.longest-step: {at_most: 60 min}}
    high tension bench:
      clear_up:
        1: {takes: 5 h}

Right:
    limits: {planning.longest-step: {at_most: 60 min}}
    high tension bench:
      clear_up:
        1: {takes: 5 h, unattended: yes}

Whose: the department's own bounds, from common practice.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import keeps, whose
from clampstand.timeline import Moment
from clampstand.units import is_over

ID = "plausible-times"
SEVERITY = Severity.WARNING
FITS = Whose(Layer.HANDBOOK, "a step takes at least as long as it waits")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step's time against the shortest and the longest, and against its own wait."""
    for moment in lesson.moments:
        takes = moment.step.takes
        bounds = [("planning.shortest-step", takes.low)]
        bounds += [] if moment.step.unattended else [("planning.longest-step", takes.high)]
        for key, end in bounds:
            limit = lesson.limit(key)
            if limit is not None and not keeps(end, limit):
                yield Problem(
                    lesson.spot(moment.ref, "takes"),
                    f"{moment.ref} takes {takes}",
                    found=str(takes),
                    needed=limit.in_words,
                    mend="look at the unit, or say unattended: yes where nobody need be there",
                    whose=whose(limit),
                )
        yield from _no_time_for(lesson, moment)


def _no_time_for(lesson: Lesson, moment: Moment) -> Iterator[Problem]:
    takes, waits = moment.step.takes, moment.step.waits
    if waits is not None and is_over(waits.low, takes.high):
        yield Problem(
            lesson.spot(moment.ref, "takes"),
            f"{moment.ref} takes {takes}, and its wait alone is {waits}",
            found=f"takes: {takes}",
            needed=f"at least {waits}",
            mend="give the step its time, or look at the units",
            whose=FITS,
        )
