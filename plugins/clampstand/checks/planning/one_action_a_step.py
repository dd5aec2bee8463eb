"""A step asks for one thing to be done.

Why: who reads a step at the bench does its first half and looks up; the second half is what gets left out. A
box is ticked for one thing, and where a step is interrupted everybody knows what has been done. Two verbs in
one breath about one thing, as in rinse and dry the beaker, count as one; so does what others are asked to do.

Wrong:
    source bench:
      run:
        1: {do: Read the brief aloud and lay the tape on the floor.}

Right:
    source bench:
      run:
        1: {do: Read the brief aloud and slowly.}

Whose: common practice in writing procedures.
"""

from collections.abc import Iterator

from clampstand.checks.asking import known_from, second_deed
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.book import Book
from clampstand.model.practical import PHASES
from clampstand.model.step import Step

ID = "one-action-a-step"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step is one thing to do, with one box to tick")


def check_book(book: Book) -> Iterator[Problem]:
    """Every step of every practical and skill, for a second verb of those that steps begin with."""
    steps = tuple(_steps(book))
    known = known_from([step.do for step, _ in steps])
    for step, spot in steps:
        if second := second_deed(step.do, known):
            yield Problem(
                spot,
                f"the step asks for two things to be done; the second begins at: {second}",
                found=step.do,
                needed="one thing to do",
                mend="make two steps of it, and give each its own data words and its share of the minutes",
                whose=RULE,
            )


def _steps(book: Book) -> Iterator[tuple[Step, Spot]]:
    for practical in book.practicals.values():
        for phase in PHASES:
            for index, step in enumerate(practical.steps(phase)):
                yield step, practical.at(phase, index, "do")
    for skill in book.skills.values():
        for index, step in enumerate(skill.steps):
            yield step, skill.at("steps", index, "do")
