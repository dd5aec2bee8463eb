"""Who is how near a source for how long: hands, teacher and watchers, as the steps run."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.calculators.remembered import once_a_book
from clampstand.calculators.worked import Input, measured
from clampstand.model.book import Book
from clampstand.model.practical import PHASES, Practical
from clampstand.timeline import Moment, replay
from clampstand.units import NotAnAmount, Quantity, added_up, number_in, quantity, read_amount

PEOPLE = {"hands": "the hand that holds the forceps", "teacher": "the teacher", "watchers": "a watcher"}


@dataclass(frozen=True, slots=True)
class Exposure:
    """How long somebody is at a distance from a source."""

    distance: Quantity
    time: Quantity


def moments_of(practical: Practical, book: Book) -> tuple[Moment, ...]:
    """The steps of a practical, replayed: once for all of its sources, whichever is used."""
    own = book.practicals.get(practical.id)
    if own is None or own.pupils != practical.pupils:
        return replay(practical)
    alike = all(own.steps(phase) is practical.steps(phase) for phase in PHASES)
    return _replayed(own, book) if alike else replay(practical)


@once_a_book
def _replayed(practical: Practical, book: Book) -> tuple[Moment, ...]:
    return replay(practical)


def exposures(practical: Practical, slot: str, who: str, book: Book) -> tuple[Exposure, ...]:
    """How long hands, teacher or watchers are at which distance from a slot's source in one lesson.

    Hands count while the source is held in a tool; everybody else while it is out of its box. A step that
    names no distance keeps the one named last.

    Args:
        practical: the practical.
        slot: the name of the slot.
        who: hands, teacher or watchers.
        book: the content.
    """
    seconds: dict[float, float] = {}
    for metres, time in _by_step(practical, slot, who, book):
        seconds[metres] = seconds.get(metres, 0.0) + time
    return tuple(Exposure(quantity(metres, "m"), quantity(time, "s")) for metres, time in seconds.items())


def _by_step(practical: Practical, slot: str, who: str, book: Book) -> Iterator[tuple[float, float]]:
    """For each step with the source out, the distance in metres and the time in seconds."""
    last = book.department.teacher_to_source.low if who == "teacher" else None
    for moment in moments_of(practical, book):
        for end, text in moment.step.stand.items():
            if end == who:
                told = _distance(practical, text)
                last = last if told is None else told
        out = moment.during.out.get(slot)
        if out is not None and last is not None and (who != "hands" or out.held_with):
            yield number_in(last, "m"), number_in(moment.step.takes.high, "s")


def _distance(practical: Practical, text: str) -> Quantity | None:
    if text in practical.numbers:
        return practical.numbers[text].value.low
    try:
        return read_amount(text, "length").low
    except NotAnAmount:
        return None


def stays_in_words(stays: tuple[Exposure, ...]) -> tuple[Input, Input]:
    """How long somebody is near a source, and how near at the nearest."""
    time = added_up((stay.time for stay in stays), "s")
    nearest = min(stay.distance for stay in stays)
    return (
        measured("time with the source out, t", time, "time", "running clock"),
        measured("nearest distance, d", nearest, "length", "steps"),
    )
