"""What was wetted with a flammable liquid has dried before anything can spark or burn.

Why: the bottle is out of the room and the wire is still damp. The vapour comes from the damp part itself, and
the first spark is on that part.

Wrong:
    cold bench:
      run:
        7: {takes: 2 min}
        8: {takes: 2 min}
        9: {takes: 13 min, lights: taper, puts_out: taper}

Right:
    cold bench:
      run:
        9: {lights: taper, puts_out: taper}

Whose: the department's own rule, for how long; that vapour burns is physics.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.times import shortest_between
from clampstand.checks.vapours import ignition, with_vapours
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.model.limit import Limit
from clampstand.timeline import Moment, StepRef
from clampstand.units import shown_best

ID = "dried-before-spark"
SEVERITY = Severity.STOP
LIMIT = "fire.drying-time"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each time something is lit or switched on, against the last step that used each liquid now gone."""
    limit = lesson.limit(LIMIT)
    if limit is None or limit.amount is None:
        return
    used: dict[str, StepRef] = {}
    for moment, vapours in with_vapours(lesson):
        for source, since in ignition(lesson, moment).items():
            for liquid, last in used.items() if since == moment.ref else ():
                if liquid not in vapours and not keeps(shortest_between(lesson, last, moment.ref), limit):
                    yield _problem(lesson, moment, source, (liquid, last), limit)
        used |= {name: moment.ref for name in (*moment.step.opens, *moment.step.handles) if name in vapours}


def _problem(
    lesson: Lesson, moment: Moment, source: str, wetted: tuple[str, StepRef], limit: Limit
) -> Problem:
    liquid, last = wetted
    time = shown_best(shortest_between(lesson, last, moment.ref), "time", 2)
    return Problem(
        lesson.spot(moment.ref),
        f"{moment.ref} lights or switches on {source} {time} after {liquid} was used in {last}",
        found=f"{time} to dry",
        needed=limit.in_words,
        mend=f"leave a longer time to dry between {last} and {moment.ref}",
        whose=whose(limit),
        related=((lesson.spot(last), "used here"),),
    )
