"""Nothing that a dangerous supply feeds is touched before the supply is off and discharged.

Why: the charge stays when the switch is off. A current limiter does nothing against it.

Wrong:
    high tension bench:
      run:
        4: {do: Switch off., discharges: (left out), discharges_with: (left out), waits: (left out)}
        6: {discharges: high-supply, discharges_with: shorting-rod, waits: 10 s}

Right:
    high tension bench:
      run:
        4: {do: Switch off., discharges: (left out), discharges_with: (left out), waits: 10 s}
        5: {discharges: high-supply, discharges_with: shorting-rod}

Whose: physics; nobody can allow an exception.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import fed_by, is_dangerous
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment, Power, StepRef, Supplied

ID = "discharged-before-touch"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "what was charged stays charged until it is shorted")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The first touch after a supply was switched on or off, against its state as hands meet it."""
    met: set[tuple[str, Power, StepRef | None]] = set()
    for moment in lesson.moments:
        met_by_hand = (*moment.step.touches, *moment.step.handles)  # who handles what is fed touches it
        if not met_by_hand:
            continue
        for supply, state in moment.handled.supplies.items():
            live = state.power in (Power.ON, Power.CHARGED)
            touched = [item for item in dict.fromkeys(met_by_hand) if item in fed_by(lesson, supply)]
            which = (supply, state.power, state.since)
            if live and touched and which not in met and is_dangerous(lesson, supply):
                met.add(which)
                yield _problem(lesson, moment, supply, state, touched)


def _problem(lesson: Lesson, moment: Moment, supply: str, state: Supplied, touched: list[str]) -> Problem:
    off = [] if state.power is Power.CHARGED else ["switch it off"]
    since = ((lesson.spot(state.since), f"{state.power.value} since this step"),) if state.since else ()
    return Problem(
        lesson.spot(moment.ref, "touches" if moment.step.touches else "handles"),
        f"{moment.ref} touches {' and '.join(touched)} while {supply} is {state.power.value}",
        found=f"{supply} {state.power.value}" + (f" since {state.since}" if state.since else ""),
        needed="switched off, waited for and discharged",
        mend=f"before {moment.ref}, {', '.join([*off, 'wait'])} and short it with a discharge lead",
        whose=RULE,
        related=since,
    )
