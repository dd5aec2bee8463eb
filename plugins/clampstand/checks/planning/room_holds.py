"""A room holds everybody who works in it.

Why: a class in a preparation room stands elbow to elbow, closer to everything than any distance on the page.
Nobody works in a lift.

Wrong:
    rooms: {lab: {holds: 12}}

Right:
    rooms: {lab: {holds: 31}}

Whose: the department's own count; how many a room may hold is law in many places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.practical import PHASES, Phase

ID = "room-holds"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "no more people work in a room than it holds")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every room of every phase, against how many work there."""
    practical = lesson.practical
    for phase in PHASES:
        rooms, people = practical.where.get(phase, ()), _people(lesson, phase)
        for index, room_id in enumerate(rooms):
            room = lesson.book.rooms.get(room_id)
            holds = room.holds if room is not None else None
            if room is not None and holds is not None and holds < people:
                yield Problem(
                    practical.at("where", phase, index),
                    f"{room_id} holds {holds}, and {people} work there",
                    found=f"{room_id} for {phase.replace('_', ' ')}",
                    needed=f"a room for {people}",
                    mend="name another room",
                    whose=RULE,
                    related=((room.spot, "the room is described here"),),
                )


def _people(lesson: Lesson, phase: Phase) -> int:
    """How many work in a phase: a class with its adults in the lesson, else one at least."""
    practical = lesson.practical
    if phase != "run" or practical.pupils == "not there":
        return 1
    return lesson.book.department.class_size + practical.needs.adults
