"""No source is out of its box for longer than the limit.

Why: dose grows with time, and so does the chance that a source is knocked over or forgotten.

Wrong:
    source bench:
      lesson: 41 min
      run:
        5: {takes: 21 min}

Right:
    source bench:
      lesson: 35 min
      run:
        5: {takes: 900 s}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import outings
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.units import added_up, shown_best

ID = "time-out"
SEVERITY = Severity.STOP
LIMIT = "radiation.time-out"


def check(lesson: Lesson) -> Iterator[Problem]:
    """From the step that takes a source out to the one that puts it back, each at its longest."""
    limit = lesson.limit(LIMIT)
    if limit is None or limit.amount is None:
        return
    for outing in outings(lesson):
        time = added_up((moment.step.takes.high for moment in outing.moments), "min")
        # One that never goes back is the matter of the rule that sources are returned.
        goes_back = outing.slot not in outing.moments[-1].after.out
        if goes_back and not keeps(time, limit):
            last = outing.moments[-1].ref
            yield Problem(
                lesson.spot(outing.since, "takes_out"),
                f"{outing.slot} is out for {shown_best(time, 'time')}, from {outing.since} to {last}",
                found=shown_best(time, "time"),
                needed=limit.in_words,
                mend="put it back between the measurements, or do less in one go",
                whose=whose(limit),
                related=((lesson.spot(last), "the last step it is out in"),),
            )
