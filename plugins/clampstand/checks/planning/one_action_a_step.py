"""A step asks for one thing to be done.

Why: who reads a step at the bench does its first half and looks up; the second half is what gets left out. A
box is ticked for one thing, and where a step is interrupted everybody knows what has been done.

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

import re
from collections.abc import Iterator

from clampstand.checks.verbs import VERBS
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.book import Book
from clampstand.model.practical import PHASES
from clampstand.model.step import Step

ID = "one-action-a-step"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step is one thing to do, with one box to tick")

_FIRST = re.compile(r"[^\W\d_]+")
_WHAT = "a|all|an|both|each|every|it|its|one|that|the|them|these|this|those|three|two|your"
_HOW = "away|back|down|off|on|out|until|up"
_JOINED = re.compile(
    rf"(?:[;.!]|,|,? and|,? and then|,? then) +([^\W\d_]+) +(?:\{{|(?:{_WHAT}|{_HOW})\b)", re.IGNORECASE
)
"""Where a second thing to do may begin: with a verb, and what or how it is done."""
_NO_VERB = re.compile(
    rf"{_WHAT}|{_HOW}|after|as|at|before|by|during|everybody|everyone|for|from|her|his|if|in|nobody|once|our|"
    "their|they|to|we|when|while|who|with|without|you"
)
"""Words that may begin a step all the same."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every step of every practical and skill, for a second verb of those that steps begin with."""
    steps = tuple(_steps(book))
    verbs = {first[0].casefold() for step, _ in steps if (first := _FIRST.match(step.do))}
    verbs |= {verb for known in VERBS for verb in known.verbs.split()}
    verbs = {verb for verb in verbs if not _NO_VERB.fullmatch(verb)}
    for step, spot in steps:
        second = next((m for m in _JOINED.finditer(step.do) if m[1].casefold() in verbs), None)
        if second is not None:
            yield Problem(
                spot,
                f"the step asks for a second thing to be done: {second[1]}",
                found=step.do,
                needed="one thing to do",
                mend="make a step of its own of it",
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
