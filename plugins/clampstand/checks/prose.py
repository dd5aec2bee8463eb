"""Every sentence of a practical with its route, for the rules that read numbers in prose."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Route
from clampstand.model.practical import PHASES, STOP_WORD, Practical
from clampstand.model.step import Step


@dataclass(frozen=True, slots=True)
class Sentence:
    """A text of a practical, where it is written, and the step it belongs to if to one."""

    text: str
    route: Route
    step: Step | None = None


def sentences_of(practical: Practical) -> Iterator[Sentence]:
    """Every text a person reads."""
    for name in ("title", "aim", "brief", "wear_note", "defer"):
        text = getattr(practical, name)
        if text:
            yield Sentence(text, (name,))
    yield from _of_steps(practical)
    yield from _of_parts(practical)


def _of_steps(practical: Practical) -> Iterator[Sentence]:
    for phase in PHASES:
        for index, step in enumerate(practical.steps(phase)):
            yield Sentence(step.do, (phase, index, "do"), step)
            if step.warn:
                yield Sentence(step.warn.hazard, (phase, index, "warn", "hazard"), step)
                yield Sentence(step.warn.avoid, (phase, index, "warn", "avoid"), step)


_PARTS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("hazards", ("here",)),
    ("when_it_fails", ("seen", "cause", "fix")),
    ("ask", ("question", "answer")),
    ("misconceptions", ("says", "really")),
    ("waste", ("how", "note")),
    ("expect", ("see", "show", "note")),
)
"""The lists of a practical and the texts each entry holds."""


def _of_parts(practical: Practical) -> Iterator[Sentence]:
    for name, texts in _PARTS:
        for index, entry in enumerate(getattr(practical, name)):
            for text_name in texts:
                text = getattr(entry, text_name)
                if text:
                    yield Sentence(text, (name, index, text_name))
    for index, hazard in enumerate(practical.hazards):
        for number, control in enumerate(hazard.controls):
            yield Sentence(control, ("hazards", index, "controls", number))


_QUOTED = re.compile(r"\{(?:free:)?\s*([^{}]*)\}")


def spoken(lesson: Lesson, text: str) -> str:
    """A text as a person says it: names and numbers in the place of what quotes them."""
    kit, numbers, rooms = lesson.book.kit, lesson.practical.numbers, lesson.book.rooms

    def said(quote: re.Match[str]) -> str:
        name = quote[1].strip()
        if name in numbers:
            return str(numbers[name].value)
        if name == STOP_WORD:
            return lesson.practical.stop_word or name
        return kit[name].name if name in kit else rooms[name].name if name in rooms else name

    return _QUOTED.sub(said, text)
