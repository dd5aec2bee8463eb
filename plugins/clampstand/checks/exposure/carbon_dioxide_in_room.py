"""Carbon dioxide stays under its limits for the whole class's dry ice, not one group's.

Why: the limit is a sum over the room. If all of it turned to gas, windows shut, the fraction must stay
under the short-term limit; and under the eight-hour limit too, unless the practical counts on ventilation,
says so, and the ventilated fraction keeps under it.

Wrong:
    cold bench:
      needs: {room: {air_changes: (left out)}}

Right:
    cold bench:
      needs: {room: {air_changes: (left out)}}
      kit:
        1: {amount: 0.3 kg}

Whose: workplace exposure limits, which are law in many places; that they are kept with windows shut is local.
"""

from collections.abc import Iterator

from clampstand.calculators.room_air import Gas, as_ventilated, gas_by_room, with_windows_shut
from clampstand.calculators.worked import Worked
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.model.limit import Limit

ID = "carbon-dioxide-in-room"
SEVERITY = Severity.STOP
LONG, SHORT = "air.carbon-dioxide-8h", "air.carbon-dioxide-15min"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every room in which gas can gather, against both limits."""
    for gas in gas_by_room(lesson.practical, lesson.book):
        shut = with_windows_shut(gas, lesson.book)
        ventilated = as_ventilated(gas, lesson.practical, lesson.book)
        for judged, key in ((shut, SHORT), (ventilated or shut, LONG)):
            limit = lesson.limit(key)
            if limit is not None and not keeps(judged.value, limit):
                yield _over(lesson, gas, judged, limit)
                break


def _over(lesson: Lesson, gas: Gas, judged: Worked, limit: Limit) -> Problem:
    practical = lesson.practical
    index = practical.where[gas.phase].index(gas.room.id)
    inputs = "; ".join(f"{entry.name} {entry.value}" for entry in judged.inputs)
    return Problem(
        practical.at("where", gas.phase, index),
        f"{judged.title}: {judged.shown}",
        found=f"{judged.shown} ({inputs})",
        needed=f"{limit.in_words}",
        mend="use less, use a larger room or the open air, or write the ventilation the practical counts on",
        whose=whose(limit),
    )
