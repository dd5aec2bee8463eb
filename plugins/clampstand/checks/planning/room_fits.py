"""The rooms a practical names are aired as it counts on, and one of them at least has what it asks for.

Why: a practical that counts on six air changes is only safe where there are six. What the numbers on the page
were worked out for must be so in the room.

Wrong:
    cold bench:
      needs: {room: {air_changes: 3 per hour}}

Right:
    cold bench:
      needs: {room: {air_changes: 1.5 per hour}}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import is_under

ID = "room-fits"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a practical names rooms it can be run in")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The rooms of the run, against what the practical needs of its room."""
    practical = lesson.practical
    needs = practical.needs.room
    rooms = [(i, r) for i, r in enumerate(practical.where.get("run", ())) if r in lesson.book.rooms]
    wanted = needs.air_changes
    for index, room_id in rooms if wanted is not None else ():
        room = lesson.book.rooms[room_id]
        aired = room.air_changes
        if wanted and not room.is_open_air and (aired is None or is_under(aired.low, wanted.low)):
            yield Problem(
                practical.at("where", "run", index),
                f"{room_id} has {aired or 'no ventilation'} and the practical counts on {wanted}",
                found=f"{room_id}: {aired or 'no air changes'}",
                needed=f"{wanted} or more",
                mend="name another room, or count on less and use less",
                whose=RULE,
                related=((room.spot, "the room is described here"),),
            )
    lacks = {r: [f for f in needs.features if f not in lesson.book.rooms[r].features] for _, r in rooms}
    if lacks and all(lacks.values()):
        yield Problem(
            practical.at("where", "run"),
            "no room of the run has everything that the practical asks for",
            found="; ".join(f"{room} has no {', '.join(missing)}" for room, missing in lacks.items()),
            needed=", ".join(needs.features),
            mend="name a room that has it, or ask for what the practical really needs",
            whose=RULE,
        )
