"""Gas is never let off below ground, nor in a room whose air is not changed.

Why: carbon dioxide is half as heavy again as air. It lies in cellars and pits, where it has killed people who
felt nothing wrong, and a room without ventilation never clears by itself.

Wrong:
    cold bench:
      where: {run: [cellar]}

Right:
    cold bench:
      where: {run: [lab, yard]}

Whose: the department's own rule, after the warnings of every authority on the gas.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.department import Room
from clampstand.model.practical import PHASES, Phase
from clampstand.timeline import Moment
from clampstand.units import is_over, q

ID = "room-for-gas"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "gas only above ground, in air that is changed")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every room of every phase in which something turns to gas or is let off, and every step's own room."""
    practical, book = lesson.practical, lesson.book
    for phase in _gassy_phases(lesson):
        for index, room_id in enumerate(practical.where.get(phase, ())):
            yield from _unfit(book.rooms.get(room_id), practical.at("where", phase, index))
    for moment in lesson.moments:
        if moment.step.room and _gas_is_about(lesson, moment):
            yield from _unfit(book.rooms.get(moment.step.room), lesson.spot(moment.ref, "room"))


def _gassy_phases(lesson: Lesson) -> list[Phase]:
    """The phases in which something that turns to gas is about, or gas is let off."""
    released = {release.phase for release in lesson.practical.releases}
    about = {m.ref.phase for m in lesson.moments if not m.step.room and _gas_is_about(lesson, m)}
    return [phase for phase in PHASES if phase in released | about]


def _gas_is_about(lesson: Lesson, moment: Moment) -> bool:
    kit = lesson.book.kit
    met = {*moment.during.present, *moment.step.handles}
    return any(item in kit and kit[item].turns_to_gas for item in met)


def _fault(room: Room | None) -> str:
    if room is None or room.is_open_air:
        return ""
    if room.level == "below ground":
        return "is below ground"
    if room.air_changes is None or not is_over(room.air_changes.low, q("0 per hour")):
        return "has no ventilation"
    return ""


def _unfit(room: Room | None, spot: Spot) -> Iterator[Problem]:
    fault = _fault(room)
    if room is not None and fault:
        yield Problem(
            spot,
            f"room {room.id} {fault}, and gas is let off or gathers there",
            found=f"{room.id} {fault}",
            needed="a ventilated room above ground, or the open air",
            mend="name another room",
            whose=RULE,
            related=((room.spot, "the room is described here"),),
        )
