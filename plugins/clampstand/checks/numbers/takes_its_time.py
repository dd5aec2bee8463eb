"""A step that lasts for a declared time takes that long, and not many times as long.

Why: the sentence prints the declared time and the plan adds up the minutes of the step. If they differ,
either the count is cut short by the bell, or half the lesson is spent waiting for nothing.

Wrong:
    source bench:
      numbers: {counting time: {value: 20 min, because: common practice}}
      run:
        1: {do: "Count without a source for {counting time}."}

Right:
    source bench:
      numbers: {counting time: {value: 10 min, because: common practice}}
      run:
        1: {do: "Count without a source for {counting time}."}

Whose: this handbook: what is printed and what is planned are one time.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.times import times_named
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import Step
from clampstand.timeline import Moment
from clampstand.units import Amount, is_over, is_same

ID = "takes-its-time"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step takes the time its sentence names")
LONGEST = 8
"""Fetching and laying out may make a step some times as long as what it waits for; ten times is a slip."""
_AGAIN = re.compile(r"\b(?:every|each time|then|times|repeat)\b", re.IGNORECASE)
"""Words that say that the time is spent more than once."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step whose sentence says for how long, against its minutes and its waiting; each time once."""
    told: set[str] = set()
    for moment in lesson.moments:
        for name in times_named(moment.step):
            number = lesson.practical.numbers.get(name)
            if number is not None and number.value.kind == "time" and name not in told:
                word = _at_odds(moment.step, number.value)
                if word:
                    told.add(name)
                    yield _problem(lesson, moment, word, name, number.value)


def _at_odds(step: Step, time: Amount) -> str:
    """The word of the step that does not go with a time it names; nothing where all do.

    Whether a wait fits into its step is told elsewhere.
    """
    if step.waits is not None:
        return "" if is_same(step.waits.low, time.low) else "waits"
    too_short = is_over(time.low, step.takes.high)
    too_long = is_over(step.takes.low, LONGEST * time.high) and not _AGAIN.search(step.do)
    return "takes" if too_short or too_long else ""


def _problem(lesson: Lesson, moment: Moment, word: str, name: str, time: Amount) -> Problem:
    written = getattr(moment.step, word)
    return Problem(
        lesson.spot(moment.ref, word),
        f"{moment.ref} names {name}, which is {time}, and {word} {written}",
        found=f"{word}: {written}",
        needed=f"{time}" if word == "waits" else f"{time} or somewhat more",
        mend="look for a slip in one of the two",
        whose=RULE,
        related=((lesson.practical.at("numbers", name, "value"), "declared here"),),
    )
