"""A dangerous supply is off before it is shorted, and shorted with something made for it.

Why: shorting a supply that is on draws an arc. A bare wire in the hand makes the hand a part of the circuit.

Wrong:
    high tension bench:
      run:
        4: {discharges_with: (left out), do: Switch off and short it.}

Right:
    high tension bench:
      run:
        4: {discharges_with: shorting-rod}

Whose: physics; nobody can allow an exception.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import is_dangerous
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment, Power

ID = "discharged-safely"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "what a supply has charged goes through whatever shorts it")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that discharges a supply."""
    for moment in lesson.moments:
        for supply in moment.step.discharges:
            if is_dangerous(lesson, supply):
                yield from _faults(lesson, moment, supply)


def _faults(lesson: Lesson, moment: Moment, supply: str) -> Iterator[Problem]:
    tool_id = moment.step.discharges_with
    tool = lesson.book.kit.get(tool_id) if tool_id else None
    if moment.handled.supply(supply).power is Power.ON:
        yield Problem(
            lesson.spot(moment.ref, "discharges"),
            f"{moment.ref} shorts {supply} while it is on",
            found=f"on since {moment.handled.supply(supply).since}",
            needed="switched off first",
            mend=f"switch {supply} off in this step or before it",
            whose=RULE,
        )
    if tool is None or not tool.discharges:
        with_what = f"with {tool.name}, which is not made for it" if tool else "and does not say with what"
        yield Problem(
            lesson.spot(moment.ref, "discharges_with" if tool_id else "discharges"),
            f"{moment.ref} discharges {supply} {with_what}",
            found=tool_id or "nothing",
            needed="an insulated lead made to discharge",
            mend="name one of the kit list under discharges_with",
            whose=RULE,
        )
