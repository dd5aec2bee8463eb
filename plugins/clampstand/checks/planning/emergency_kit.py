"""Whatever an emergency procedure reaches for is in the kit, or always in every room of the run.

Why: a spill kit that is in another room fails exactly when it is needed. Nobody looks for one then.

Wrong:
    emergencies:
      dropped:
        do:
          2: {needs: [clean-up-kit, thin-gloves]}

Right:
    emergencies:
      dropped:
        do:
          2: {needs: clean-up-kit}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sentences import quoted_in
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.emergency import Action

ID = "emergency-kit"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "what an emergency needs is at hand before anything begins")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every action of every procedure the practical names, against its kit and each room of its run."""
    practical = lesson.practical
    for index, emergency_id in enumerate(practical.emergency):
        emergency = lesson.book.emergencies.get(emergency_id)
        for action in emergency.do if emergency else ():
            for item_id in _needed(lesson, action):
                without = _rooms_without(lesson, item_id)
                if item_id not in practical.items and without and emergency:
                    yield Problem(
                        practical.at("emergency", index),
                        f"{emergency.title}: it needs {lesson.book.kit[item_id].name}, "
                        f"and there is none in {', '.join(without)}",
                        found=f"{item_id} neither in the kit list nor in {', '.join(without)}",
                        needed=f"{item_id} in the kit list, or in the equipment of every room of the run",
                        mend=f"add {item_id} to the kit list, or hang one up in the room",
                        whose=RULE,
                        related=((emergency.at("do", emergency.do.index(action)), "needed here"),),
                    )


def _needed(lesson: Lesson, action: Action) -> tuple[str, ...]:
    """The items an action needs, written so or only named in its sentence."""
    named = dict.fromkeys((*action.needs, *quoted_in(action.do)))
    return tuple(item for item in named if item in lesson.book.kit)


def _rooms_without(lesson: Lesson, item_id: str) -> tuple[str, ...]:
    rooms = lesson.book.rooms
    run = lesson.practical.where.get("run", ())
    without = tuple(room for room in run if room in rooms and item_id not in rooms[room].equipment)
    return without or (() if run else ("any room",))
