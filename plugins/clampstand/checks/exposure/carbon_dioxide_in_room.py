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

from clampstand.calculators.room_air import as_ventilated, with_windows_shut
from clampstand.calculators.worked import Worked
from clampstand.checks.gas import Place, is_dangerous, places
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.model.limit import Limit
from clampstand.units import is_under

ID = "carbon-dioxide-in-room"
SEVERITY = Severity.STOP
LONG, SHORT = "air.carbon-dioxide-8h", "air.carbon-dioxide-15min"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every room in which gas can gather, against both limits; one that a step passes through, the shorter.

    What is dangerous to life, and a limit below the air outdoors, are the matter of other rules.
    """
    outdoors = lesson.book.department.outdoor_carbon_dioxide
    for place in places(lesson):
        if is_dangerous(lesson, place.gas):
            continue
        shut = with_windows_shut(place.gas, lesson.book)
        ventilated = as_ventilated(place.gas, lesson.practical, lesson.book)
        for_long = ventilated if ventilated and is_under(ventilated.value, shut.value) else shut
        for judged, key in ((shut, SHORT), *(() if place.passing else ((for_long, LONG),))):
            limit = lesson.limit(key)
            makes_sense = limit and limit.amount and not is_under(limit.amount.high, outdoors.value)
            if limit and makes_sense and not keeps(judged.value, limit):
                yield _over(place, judged, limit)
                break


def _over(place: Place, judged: Worked, limit: Limit) -> Problem:
    inputs = "; ".join(f"{entry.name} {entry.value}" for entry in judged.inputs)
    return Problem(
        place.spot,
        f"{judged.title}: {judged.shown}",
        found=f"{judged.shown}, {judged.note} ({inputs})",
        needed=f"{limit.in_words}",
        mend="use less, use a larger room or the open air, or write the ventilation the practical counts on",
        whose=whose(limit),
    )
