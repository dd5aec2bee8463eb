"""Every sentence of a practical with its route, for the rules that read numbers in prose."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.findings import Route
from clampstand.model.base import IN_BRACES
from clampstand.model.practical import PHASES, Practical
from clampstand.model.step import Step


def quoted_in(text: str) -> list[str]:
    """The names a text holds in braces, in their order: ``["source", "forceps"]``."""
    return IN_BRACES.findall(text)


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
