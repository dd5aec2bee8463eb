"""What turns to gas is never used or kept below ground, nor in a room whose air is not changed.

Why: carbon dioxide is half as heavy again as air. It lies in cellars and pits, where it has killed people who
felt nothing wrong, and a room without ventilation never clears by itself.

Wrong:
    cold bench:
      run:
        8: {room: cellar}

Right:
    cold bench:
      run:
        8: {room: yard}

Whose: the department's own rule, after the warnings of every authority on the gas.
"""

from collections.abc import Iterator

from clampstand.checks.gas import about, is_dangerous, places
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.book import Book
from clampstand.model.department import Room
from clampstand.model.practical import PHASES, Phase
from clampstand.units import is_over, q

ID = "room-for-gas"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "gas only above ground, in air that is changed")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every room of every phase in which something turns to gas or is let off, and every step's own room.

    A room in which the gas would be dangerous to life is the matter of another rule.
    """
    practical, book = lesson.practical, lesson.book
    deadly = {place.spot for place in places(lesson) if is_dangerous(lesson, place.gas)}
    spots = [
        (practical.at("where", phase, index), room_id, True)
        for phase in _gassy_phases(lesson)
        for index, room_id in enumerate(practical.where.get(phase, ()))
    ]
    spots += [
        (lesson.spot(moment.ref, "room"), moment.step.room, not moment.step.unattended)
        for moment in lesson.moments
        if moment.step.room and about(lesson, moment)
    ]
    for spot, room_id, with_people in spots:
        if spot not in deadly:
            why = "gas is let off or gathers there"
            yield from _unfit(book.rooms.get(room_id), spot, why, with_people=with_people)


def check_book(book: Book) -> Iterator[Problem]:
    """The room in which everything that turns to gas is kept."""
    for item in book.kit.values():
        if item.turns_to_gas and item.kept_in:
            yield from _unfit(book.rooms.get(item.kept_in), item.at("kept_in"), f"{item.name} is kept there")


def _gassy_phases(lesson: Lesson) -> list[Phase]:
    """The phases in which something that turns to gas is about, or gas is let off."""
    released = {release.phase for release in lesson.practical.releases}
    there = {m.ref.phase for m in lesson.moments if not m.step.room and about(lesson, m)}
    return [phase for phase in PHASES if phase in released | there]


def _fault(room: Room, *, with_people: bool) -> str:
    """What is wrong with a room; a lift in which something travels alone need not be ventilated."""
    if room.is_open_air:
        return ""
    if room.level == "below ground":
        return "is below ground"
    if not with_people:
        return ""
    if room.air_changes is None or not is_over(room.air_changes.low, q("0 per hour")):
        return "has no ventilation"
    return ""


def _unfit(room: Room | None, spot: Spot, because: str, *, with_people: bool = True) -> Iterator[Problem]:
    fault = _fault(room, with_people=with_people) if room is not None else ""
    if room is not None and fault:
        yield Problem(
            spot,
            f"room {room.id} {fault}, and {because}",
            found=f"{room.id} {fault}",
            needed="a ventilated room above ground, or the open air",
            mend="name another room",
            whose=RULE,
            related=((room.spot, "the room is described here"),),
        )
