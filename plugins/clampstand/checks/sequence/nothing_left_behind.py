"""What is lit is put out, and what was opened, brought in, put up or put on goes again by the end.

Why: whoever comes in next finds a flame in an empty room, an open bottle or a warning that no longer means
anything, and was not there when it began.

Wrong:
    cold bench:
      run:
        9: {lights: taper}

Right:
    cold bench:
      run:
        9: {lights: taper, puts_out: taper}

Whose: the department's own rule.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.endings import Ending, endings
from clampstand.checks.meeting import with_what_goes_on
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import ACTORS
from clampstand.timeline import Power, StepRef

ID = "nothing-left-behind"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a room is left as the next class may find it")


@dataclass(frozen=True, slots=True)
class Left:
    """Something that goes on at an ending: how, since which step, what ends it, and how grave that is."""

    name: str
    state: str
    since: StepRef
    ends: str
    severity: Severity = SEVERITY


def check(lesson: Lesson) -> Iterator[Problem]:
    """Looks at each moment the class leaves and at the last step, and names each thing once."""
    met: set[tuple[str, str]] = set()
    for ending in endings(lesson):
        for left in (*_burning(lesson, ending), *_worn(ending), *_about(lesson, ending)):
            if (left.name, left.state) not in met:
                met.add((left.name, left.state))
                yield _problem(lesson, ending, left)


def _burning(lesson: Lesson, ending: Ending) -> Iterator[Left]:
    """What nobody may walk away from, be it from the room or from the day's work."""
    after = ending.moment.after
    for item, since in after.lit.items():
        yield Left(item, "lit", since, "puts_out")
    for moment, going_on in with_what_goes_on(lesson):
        if moment.ref == ending.moment.ref:
            gone = {*moment.step.closes, *moment.step.takes_away, *after.lit, *moment.step.puts_out}
            on = {item for item, state in moment.during.supplies.items() if state.power is Power.ON}
            for item, since in going_on.items():
                if item not in gone | on and not ending.class_leaves:
                    yield Left(item, "open", since, "closes or takes_away")


def _about(lesson: Lesson, ending: Ending) -> Iterator[Left]:
    """What must be gone when the last step of all is done."""
    if ending.class_leaves or ending.moment.ref != lesson.moments[-1].ref:
        return
    after, kit = ending.moment.after, lesson.book.kit
    for item, since in after.present.items():
        harmless = item in kit and not kit[item].hazards
        grave = Severity.WARNING if harmless else SEVERITY
        yield Left(item, "in the room", since, "takes_away", grave)
    for item, since in after.barriers.items():
        yield Left(item, "up", since, "takes_down", Severity.WARNING)


def _worn(ending: Ending) -> Iterator[Left]:
    """What somebody still wears: pupils as they go, everybody when the work is done."""
    worn: dict[str, list[str]] = {}
    for person, items in ending.moment.after.worn.items():
        goes = person in ACTORS["pupils"] or not ending.class_leaves
        for item in items if goes else ():
            worn.setdefault(item, []).append(person)
    for item, people in worn.items():
        since = ending.moment.after.worn[people[0]][item]
        yield Left(item, f"worn by the {', '.join(people)}", since, "takes_off", Severity.WARNING)


def _problem(lesson: Lesson, ending: Ending, left: Left) -> Problem:
    ref = ending.moment.ref
    return Problem(
        lesson.spot(ref),
        f"{ending.words} while {left.name} is {left.state} since {left.since}",
        found=f"{left.name} {left.state}",
        needed=f"{left.ends} {left.name} before the end",
        mend=f"write {left.ends}: {left.name} in {ref} or before it",
        whose=RULE,
        related=((lesson.spot(left.since), "since this step"),),
        severity=left.severity,
    )
