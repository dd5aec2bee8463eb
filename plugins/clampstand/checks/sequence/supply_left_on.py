"""No supply is left on, and no dangerous one charged, when the class leaves or the work is done.

Why: whoever clears up was not there when it was switched on, and touches what looks dead.

Wrong:
    high tension bench:
      run:
        4: {do: Switch off., discharges: (left out), discharges_with: (left out)}
        5: {touches: (left out)}
      clear_up:
        1: {discharges: high-supply, discharges_with: shorting-rod}

Right:
    high tension bench:
      run:
        4: {do: Switch off., discharges: (left out), discharges_with: (left out)}
        5: {touches: (left out)}
        6: {discharges: high-supply, discharges_with: shorting-rod}

Whose: physics for the charge; the rest is the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.endings import Ending, endings
from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import is_dangerous
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Power

ID = "supply-left-on"
SEVERITY = Severity.STOP
LEFT_ON = Whose(Layer.LOCAL, "supplies are off before anybody leaves")
LEFT_CHARGED = Whose(Layer.PHYSICS, "what was charged stays charged until it is shorted")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Looks at each moment the class leaves and at the end of the last step, and names a supply once."""
    met: set[str] = set()
    for ending in endings(lesson):
        for supply, problem in _left(lesson, ending):
            if supply not in met:
                met.add(supply)
                yield problem


def _left(lesson: Lesson, ending: Ending) -> Iterator[tuple[str, Problem]]:
    ref = ending.moment.ref
    for supply, state in ending.moment.after.supplies.items():
        charged = state.power is Power.CHARGED and is_dangerous(lesson, supply)
        if state.power is not Power.ON and not charged:
            continue
        yield (
            supply,
            Problem(
                lesson.spot(ref),
                f"{ending.words} while {supply} is {state.power.value}",
                found=f"{supply} {state.power.value}" + (f" since {state.since}" if state.since else ""),
                needed="off and discharged",
                mend=f"switch {supply} off, wait and discharge it before {ref}",
                whose=LEFT_CHARGED if charged else LEFT_ON,
                related=((lesson.spot(state.since), "since this step"),) if state.since else (),
            ),
        )
