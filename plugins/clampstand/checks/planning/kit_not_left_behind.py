"""What is used in the lesson is put out for it, and not only for what is prepared in another room.

Why: a line that is only to prepare is on no card and stays in the preparation room. Whoever needs the thing
for a step in front of the class has to leave the class for it, or does without.

Wrong:
    cold bench:
      kit:
        10: {item: small-lamp, per: class, phase: prepare}
      run:
        4: {do: "Listen to it under the {small-lamp}."}

Right:
    cold bench:
      kit:
        10: {item: small-lamp, per: class}
      run:
        4: {do: "Listen to it under the {small-lamp}."}

Whose: common practice in preparation rooms.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sentences import quoted_in
from clampstand.findings import Layer, Problem, Route, Severity, Whose
from clampstand.model.practical import Phase, Practical

ID = "kit-not-left-behind"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what is used in a room is brought into it")
_IN_THE_LESSON: tuple[Phase, ...] = ("set_up", "run")
_KEPT_OUT = re.compile(r"\b(?:no|not|never|without|instead of)\b[^.;{]*$", re.IGNORECASE)
"""Before a name: it is said of the thing that it is not there."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step of setting up and of the lesson, against what is put out for the preparation alone."""
    practical = lesson.practical
    lines = practical.kit
    later = {line.item for line in lines if line.phase != "prepare"}
    behind = {line.item: number for number, line in enumerate(lines) if line.item not in later}
    for route, text in _told(practical) if behind else ():
        for item in dict.fromkeys(quoted_in(text)):
            if item in behind and not _KEPT_OUT.search(text.partition(f"{{{item}}}")[0]):
                yield Problem(
                    practical.at(*route),
                    f"{item} is used in the lesson, and put out only to prepare",
                    found="phase: prepare",
                    needed="a line for the lesson too",
                    mend="leave the phase out of its line, or name the room to which somebody goes for it",
                    whose=RULE,
                    related=((practical.at("kit", behind[item], "phase"), "its line of the kit list"),),
                )


def _told(practical: Practical) -> Iterator[tuple[Route, str]]:
    """What is done elsewhere than it was prepared; not what sends somebody back there."""
    there = set(practical.where.get("prepare", ()))
    for phase in _IN_THE_LESSON:
        if there & set(practical.where.get(phase, ())):
            continue
        for number, step in enumerate(practical.steps(phase)):
            if step.room not in there and not there & set(quoted_in(step.do)):
                yield (phase, number, "do"), step.do
