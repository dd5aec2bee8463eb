"""Pupils do something only while they are in the room.

Why: a step for pupils before they come, or after they went, is done by somebody else, who wears what the
other steps gave to them, or by nobody.

Wrong:
    source bench:
      clear_up:
        1: {by: pupils}

Right:
    source bench:
      clear_up:
        1: {by: pupils, class: arrives}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "pupils-are-there"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "whoever does a step is there")
OF_THE_CLASS = frozenset({"pupils", "volunteer"})


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step for the class, and every departure, while no class is there; and a class that stays."""
    for moment in lesson.moments:
        named = sorted(_of_the_class(lesson, moment) & set(moment.step.by))
        who = named[0] if named else "class" if moment.step.class_ == "leaves" else ""
        if who and not moment.during.class_here:
            yield Problem(
                lesson.spot(moment.ref, "by" if named else "class"),
                f"{moment.ref} is for {_called(who)}, and no class is in the room",
                found=f"by: {who}" if named else "class: leaves",
                needed="class: arrives in this step or one before it",
                mend="write class: arrives, or let somebody else do it",
                whose=RULE,
            )
    yield from _still_there(lesson)


def _still_there(lesson: Lesson) -> Iterator[Problem]:
    """A class that comes once more after the run, and that no step sends away from what is done after it."""
    last = lesson.moments[-1] if lesson.moments else None
    if last is not None and last.ref.phase != "run" and last.before.class_here and last.after.class_here:
        yield Problem(
            lesson.spot(last.ref),
            f"{last.ref} is the last, and the class that arrived is still in the room",
            found="class: arrives in a step before it",
            needed="class: leaves, once its part is done",
            mend="write class: leaves in the step with which it goes",
            whose=RULE,
        )


def _of_the_class(lesson: Lesson, moment: Moment) -> frozenset[str]:
    """The names that mean the class: in the run of a lesson with a class, "everyone" is with it."""
    with_a_class = moment.ref.phase == "run" and lesson.practical.pupils != "not there"
    return OF_THE_CLASS | {"everyone"} if with_a_class else OF_THE_CLASS


def _called(who: str) -> str:
    return who if who == "everyone" else f"the {who}"
