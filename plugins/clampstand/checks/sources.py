"""Sources as rules see them: which may fill a slot, when each is out of its box, and what may touch it."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Spot
from clampstand.model.department import Source
from clampstand.model.practical import SourceSlot
from clampstand.timeline import Moment, StepRef


@dataclass(frozen=True, slots=True)
class Candidate:
    """A source of the register that may fill a slot, and where the practical names it."""

    slot: SourceSlot
    source: Source
    spot: Spot


def candidates(lesson: Lesson) -> Iterator[Candidate]:
    """Every source every slot may be filled with."""
    for number, slot in enumerate(lesson.practical.sources):
        for choice, source_id in enumerate(slot.one_of):
            if source_id in lesson.book.sources:
                spot = lesson.practical.at("sources", number, "one_of", choice)
                yield Candidate(slot, lesson.book.sources[source_id], spot)


def containment(source: Source) -> str:
    """How a source is contained: sealed, generator, unsealed or object."""
    return "sealed" if source.form.startswith("sealed") else source.form


def is_in_use(source: Source) -> bool:
    """Whether a lesson may ask for it."""
    return source.status == "in use"


def needs_tool(lesson: Lesson, slot_name: str) -> bool:
    """Whether a slot may be filled with a source that no hand may touch; so it is if nothing is known."""
    sources = lesson.candidates(slot_name)
    return not sources or any(source.held == "forceps" for source in sources)


@dataclass(frozen=True, slots=True)
class Outing:
    """A source out of its box: from which step, and all the steps it is out in."""

    slot: str
    since: StepRef
    moments: tuple[Moment, ...]


def outings(lesson: Lesson) -> tuple[Outing, ...]:
    """Every time a source is out of its box, in order."""
    together: dict[tuple[str, StepRef], list[Moment]] = {}
    for moment in lesson.moments:
        for slot, out in moment.during.out.items():
            together.setdefault((slot, out.since), []).append(moment)
    return tuple(Outing(slot, since, tuple(moments)) for (slot, since), moments in together.items())
