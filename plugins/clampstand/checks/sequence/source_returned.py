"""Every source is back in its box and counted back before the class leaves.

Why: if a source is missing, the only people who can help to find it are still in the room.

Wrong:
    source bench:
      run:
        6: {counts_back: (left out)}
        7: {counts_back: source}

Right:
    source bench:
      run:
        6: {counts_back: source}

Whose: the department's own rule; the duty to account for sources is law in many places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "source-returned"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "sources are counted back before anybody leaves")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Looks at the moment the class leaves, and at the end of the last step."""
    if not lesson.moments:
        return
    leaving = [moment for moment in lesson.moments if moment.before.class_here and _leaves(lesson, moment)]
    for moment in leaving or [lesson.moments[-1]]:
        yield from _not_returned(lesson, moment, class_leaves=bool(leaving))


def _leaves(lesson: Lesson, moment: Moment) -> bool:
    """Whether the class goes in this step: by its own words, or because the phase ends."""
    number_in_run = len(lesson.practical.run)
    return moment.step.class_ == "leaves" or (
        moment.ref.phase == "run" and moment.ref.number == number_in_run
    )


def _not_returned(lesson: Lesson, moment: Moment, *, class_leaves: bool) -> Iterator[Problem]:
    # A source counted back in the very step in which the class leaves is counted too late.
    world = moment.during if moment.step.class_ == "leaves" else moment.after
    end = f"the class leaves in {moment.ref}" if class_leaves else f"{moment.ref} is the last"
    for slot, since in world.signed_out.items():
        fault = "is out of its box" if slot in world.out else "has not been counted back"
        yield Problem(
            lesson.spot(moment.ref),
            f"{end} while {slot} {fault}",
            found=f"{slot} signed out since {since}",
            needed="put back and counted back first",
            mend=f"put {slot} back and count it back before {moment.ref}",
            whose=RULE,
            related=((lesson.spot(since), "signed out here"),),
        )
