"""A step that plots, compares or works something out names the results it is worked out of.

Why: a result that comes too late, or was lost with a step, is missed only where the step that needs it says
so. Whoever writes a result on the board, or adds to it, needs it as well. A talk needs none.

Wrong:
    cold bench:
      run:
        9: {do: Compare long tracks with short ones.}

Right:
    cold bench:
      run:
        9: {do: Compare long tracks with short ones., builds_on: tracks}

Whose: this handbook.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import Step

ID = "worked-out-of-results"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step names the results it needs")
_WORKS_OUT = re.compile(r"(?:plot|divide|work(?: \S+)? out|draw one over)\b", re.IGNORECASE)
_THINKS = re.compile(r"(?:compare|explain)\b", re.IGNORECASE)
"""Pupils do so with results; a teacher also explains the brief, and compares a number with the register."""
_TAKES_UP = re.compile(
    r"(?:add|subtract|plot|divide|work(?: \S+)? out)\b|(?P<loosely>write\b|put\b.*\bin order\b)",
    re.IGNORECASE,
)
"""What is done with a result: by its whole name, or loosely, by the word that says what it is."""
_QUOTED = re.compile(r"\{[^{}]*\}")
STAFF = frozenset({"teacher", "second adult", "technician"})
_WORD = re.compile(r"[a-z-]{4,}", re.IGNORECASE)
_COMMON = frozenset(
    {
        *("after", "again", "behind", "count", "counts", "does", "each", "found", "from", "more", "other"),
        *("that", "through", "time", "times", "what", "when", "which", "with", "without"),
    }
)
"""Words of a result's name that do not tell which result it is."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step whose sentence begins so, once something has been measured in its phase."""
    results: dict[str, str] = {}
    """Result → the phase it was measured in."""
    for moment in lesson.moments:
        step = moment.step
        taught = moment.ref.phase == "run" or moment.during.class_here
        here = [name for name, phase in results.items() if taught and phase == moment.ref.phase]
        lacks = here if not step.builds_on and _works_out(step) else _named(step, here)
        if lacks:
            yield Problem(
                lesson.spot(moment.ref, "do"),
                f"{moment.ref} works something out, and its data do not say of what",
                found="no builds_on" if not step.builds_on else f"builds_on: {', '.join(step.builds_on)}",
                needed=f"builds_on: one or more of {', '.join(lacks)}",
                mend="write builds_on with every result it needs",
                whose=RULE,
            )
        results |= {name: moment.ref.phase for name in step.measures if name not in results}


def _works_out(step: Step) -> bool:
    by_staff = set(step.by) <= STAFF
    return bool(_WORKS_OUT.match(step.do) or (not by_staff and _THINKS.match(step.do)))


def _named(step: Step, results: list[str]) -> list[str]:
    """The results that a sentence takes up and the step does not build on."""
    verb = _TAKES_UP.match(step.do) if results and not step.measures else None
    if verb is None:
        return []
    said = _QUOTED.sub("", step.do).casefold()
    words = {_stem(word) for word in _WORD.findall(said)} if verb["loosely"] and not step.builds_on else set()
    return [
        name
        for name in results
        if not any(name in other for other in step.builds_on)
        and (re.search(rf"\b{re.escape(name.casefold())}\b", said) or words & _telling(name))
    ]


def _telling(name: str) -> set[str]:
    """The words that say what a result is: "mass" of "mass of the block", "what lithium does" as it is."""
    head = name.casefold().partition(" of ")[0]
    return {_stem(word) for word in _WORD.findall(head) if word not in _COMMON}


def _stem(word: str) -> str:
    """A word without the ending of more than one.

    >>> _stem("masses"), _stem("mass"), _stem("tracks")
    ('mass', 'mass', 'track')
    """
    if word.endswith("sses"):
        return word[:-2]
    return word[:-1] if word.endswith("s") and not word.endswith("ss") else word
