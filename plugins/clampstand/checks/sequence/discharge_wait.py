"""Between switching a dangerous supply off and shorting it there is the wait the limit asks for.

Why: in that time most of the charge drains inside the supply. Shorted at once, all of it goes through the
lead, with a crack and a start.

Wrong:
    high tension bench:
      run:
        4: {do: Switch off and short it., waits: 9 s}

Right:
    high tension bench:
      run:
        4: {do: Switch off and short it., waits: 0.2 min}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import is_dangerous
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.timeline import Moment, Power
from clampstand.units import shown_best

ID = "discharge-wait"
SEVERITY = Severity.STOP
LIMIT = "electrical.discharge-wait"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that discharges what was on or charged until then."""
    limit = lesson.limit(LIMIT)
    if limit is None or limit.amount is None:
        return
    for moment in lesson.moments:
        for supply in moment.step.discharges:
            waited = moment.handled.supply(supply).waited
            if _was_charged(moment, supply) and is_dangerous(lesson, supply) and not keeps(waited, limit):
                yield Problem(
                    lesson.spot(moment.ref, "discharges"),
                    f"{moment.ref} shorts {supply} {shown_best(waited, 'time')} after it is switched off",
                    found=f"a wait of {shown_best(waited, 'time')}",
                    needed=limit.in_words,
                    mend=f"write waits: {limit.amount} in the step that switches off or in this one",
                    whose=whose(limit),
                )


def _was_charged(moment: Moment, supply: str) -> bool:
    """Whether the step itself makes a charged supply safe; one shorted while on is another rule's matter."""
    before = moment.before.supply(supply).power in (Power.ON, Power.CHARGED)
    return before and moment.handled.supply(supply).power is Power.DISCHARGED
