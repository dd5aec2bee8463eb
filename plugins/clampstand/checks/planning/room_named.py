"""A practical that brings gas, high voltage or sources says what its room must have, and which rooms will do.

Why: a room that is merely free has no socket where the supply must stand and no window that opens. It is
found out at the bell, with a class at the door.

Wrong:
    source bench:
      needs: {room: {features: (left out)}}

Right:
    source bench:
      needs: {room: {features: [windows]}}

Whose: this handbook: what a room must have is part of the practical.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import dangerous_supplies
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "room-named"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what a room must have is written down")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The features and the rooms of the run, where something in it can hurt."""
    practical = lesson.practical
    because = _because(lesson)
    if not because:
        return
    for missing, spot, needed, mend in (
        (
            not practical.needs.room.features,
            practical.at("needs"),
            "needs, room, features",
            "write what the room must have: mains, windows, a bench of its own",
        ),
        (
            not practical.where.get("run"),
            practical.at("where"),
            "where, run: the rooms that will do",
            "name the rooms",
        ),
    ):
        if missing:
            yield Problem(
                spot,
                f"the practical uses {', '.join(because)} and does not say which room will do",
                found="any room",
                needed=needed,
                mend=mend,
                whose=RULE,
            )


def _because(lesson: Lesson) -> list[str]:
    practical, kit = lesson.practical, lesson.book.kit
    gas = [kit[item].name for item in sorted(practical.items) if item in kit and kit[item].turns_to_gas]
    high = [used.item.name for used, _ in dangerous_supplies(lesson)]
    return gas + high + (["a source"] if practical.sources else [])
