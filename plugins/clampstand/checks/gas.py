"""Where gas can gather: the rooms of a practical and of its steps, with how much there is."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.calculators.kit_totals import mass_in_room
from clampstand.calculators.room_air import Gas, gas_by_room, with_windows_shut
from clampstand.checks.rule import Lesson
from clampstand.findings import Spot
from clampstand.limits import keeps
from clampstand.model.department import Room
from clampstand.model.practical import PHASES
from clampstand.timeline import Moment

DANGEROUS = "air.carbon-dioxide-idlh"
"""The key of the limit above which people must not be, not even to leave."""


_WAYS = r"(?:in|into|by|with|through|via|take|use)"
_NO = re.compile(
    r"\b(?:not|never|no|nobody|without|instead of|don't|alone|unaccompanied|by itself|on its own)\b",
    re.IGNORECASE,
)
"""What says that nobody goes there, or nobody with it."""
_GOES_ALONG = re.compile(
    r"(?:^|[,.;]\s+|\b(?:and|then)\s+)(?:carry|take|bring|wheel|ride|go)\b", re.IGNORECASE
)
"""What is told to somebody who goes along; what is put or sent somewhere may go alone."""


@dataclass(frozen=True, slots=True)
class Place:
    """A room in which gas can gather while people are in it, and where the practical names it.

    ``passing`` is whether a single step is done there; ``along`` whether a sentence sends somebody into it.
    """

    gas: Gas
    spot: Spot
    where: str
    passing: bool = False
    along: bool = False


def places(lesson: Lesson) -> Iterator[Place]:
    """Every room of a phase in which gas is let off, then every step's own room while it is about."""
    practical = lesson.practical
    met: set[tuple[str, str]] = set()
    for gas in gas_by_room(practical, lesson.book):
        met.add((gas.phase, gas.room.id))
        index = practical.where[gas.phase].index(gas.room.id)
        yield Place(gas, practical.at("where", gas.phase, index), gas.phase.replace("_", " "))
    for moment in lesson.moments:
        room = lesson.book.rooms.get(moment.step.room or "")
        if room is None or (moment.ref.phase, room.id) in met or moment.step.unattended:
            continue
        gas_there = _carried(lesson, moment, room)
        if gas_there is not None:
            met.add((moment.ref.phase, room.id))
            yield Place(gas_there, lesson.spot(moment.ref, "room"), str(moment.ref), passing=True)


def places_said(lesson: Lesson) -> Iterator[Place]:
    """Every room that only a step's sentence goes into while gas is about, as by the lift."""
    for moment in lesson.moments:
        if moment.step.unattended or not about(lesson, moment) or _NO.search(moment.step.do):
            continue
        for room in lesson.book.rooms.values():
            name = rf"(?:\{{{re.escape(room.id)}\}}|{re.escape(room.name)}\b)"
            said = re.search(rf"\b{_WAYS} (?:the |a )?{name}", moment.step.do, re.IGNORECASE)
            gas_there = _carried(lesson, moment, room) if said and room.id != moment.step.room else None
            if gas_there is not None:
                along = bool(_GOES_ALONG.search(moment.step.do))
                yield Place(
                    gas_there, lesson.spot(moment.ref, "do"), str(moment.ref), passing=True, along=along
                )


def about(lesson: Lesson, moment: Moment) -> tuple[str, ...]:
    """What turns to gas and is in the room in a step."""
    kit = lesson.book.kit
    met = dict.fromkeys((*moment.during.present, *moment.step.handles))
    return tuple(item for item in met if item in kit and kit[item].turns_to_gas)


def is_dangerous(lesson: Lesson, gas: Gas) -> bool:
    """Whether all of it turned to gas would be dangerous to life in the room, windows shut."""
    limit = lesson.limit(DANGEROUS)
    return limit is not None and not keeps(with_windows_shut(gas, lesson.book).value, limit)


def _carried(lesson: Lesson, moment: Moment, room: Room) -> Gas | None:
    """The gas of everything that is about in a step's own room; None in the open air or where nothing is."""
    masses = [mass_in_room(item, lesson.practical, lesson.book) for item in about(lesson, moment)]
    known = [mass for mass in masses if mass is not None]
    if not known or room.is_open_air or room.volume is None:
        return None
    phase = next(phase for phase in PHASES if phase == moment.ref.phase)
    return Gas(phase, room, room.volume, sum(known[1:], known[0]), None)
