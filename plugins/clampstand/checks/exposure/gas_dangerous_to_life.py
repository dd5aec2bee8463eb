"""Nobody is in a lift or a small room with so much that its gas could be dangerous to life.

Why: a lift that sticks for a quarter of an hour is a closed box. One kilogram of dry ice in it ends as half a
cubic metre of gas, and whoever is inside has no way out.

Wrong:
    cold bench:
      run:
        8: {room: hoist}

Right:
    cold bench:
      run:
        8: {room: hoist, unattended: yes}

Whose: guidance on when air is dangerous to life; in many places law.
"""

from collections.abc import Iterator

from clampstand.calculators.room_air import with_windows_shut
from clampstand.checks.gas import DANGEROUS, is_dangerous, places, places_said
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity
from clampstand.limits import whose

ID = "gas-dangerous-to-life"
SEVERITY = Severity.STOP


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every room with people in it, as if all that is there turned to gas and none of it left."""
    limit = lesson.limit(DANGEROUS)
    written = list(places(lesson))
    judged_rooms = {place.gas.room.id for place in written}
    said = [place for place in places_said(lesson) if place.gas.room.id not in judged_rooms]
    for place in (*written, *said):
        if limit is not None and is_dangerous(lesson, place.gas):
            judged = with_windows_shut(place.gas, lesson.book)
            inputs = "; ".join(f"{entry.name} {entry.value}" for entry in judged.inputs)
            yield Problem(
                place.spot,
                f"{place.where}: people are in {place.gas.room.id} with what could make {judged.shown} there",
                found=f"{judged.shown}, {judged.note} ({inputs})",
                needed=limit.in_words,
                mend="send it alone, carry it by the stairs or outdoors, or use much less",
                whose=whose(limit),
                related=((place.gas.room.spot, "the room is described here"),),
                severity=Severity.WARNING if place in said and not place.along else None,
            )
