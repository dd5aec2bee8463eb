"""Inputs made from the content: a declared number to change, another day or room, a source's activity."""

import datetime as dt

from clampstand.calculators.activity_today import nuclide_of
from clampstand.calculators.worked import CannotWork
from clampstand.limits import the_limit
from clampstand.model.book import Book
from clampstand.model.days import written_day
from clampstand.model.department import Source
from clampstand.model.limit import Limit
from clampstand.physics.decay import activity_after
from clampstand.rendering.live.parts import Asked, AskedDay, Choice, Fixed, Of, Option, Since, days
from clampstand.units import KINDS, Amount, Quantity, number_in, q, quantity

_AHEAD = 20
"""How many years ahead a reader may look."""
LATER = (0, 1, 2, 5, 10, 20)
"""Years after the department's day that a table of days shows."""


def limits_of(book: Book, *keys: str, **circumstances: str) -> tuple[Limit, ...]:
    """The strictest limit in force of each key, where it limits a quantity."""
    found = (the_limit(key, book, **circumstances) for key in keys)
    return tuple(limit for limit in found if limit is not None and limit.amount is not None)


def asked_near(name: str, label: str, amount: Amount, spread: float = 10) -> Asked:
    """A declared number to change, from a part to a multiple of what it is.

    Raises:
        CannotWork: it is nought, or below.
    """
    start = in_unit(amount.value, amount.kind, amount.unit)
    if start <= 0:
        raise CannotWork(f"{label} is {amount}: there is nothing near it to try")
    low, high = _tidy(start / spread), _tidy(start * spread)
    return Asked(name, label, amount.kind, amount.unit, start, low, high, _tidy(start / 10))


def asked_up_to(name: str, label: str, start: Amount, highest: Quantity) -> Asked:
    """A number to change from nought to the highest there can be here."""
    high = in_unit(highest, start.kind, start.unit)
    begin = min(in_unit(start.value, start.kind, start.unit), high)
    return Asked(name, label, start.kind, start.unit, begin, 0, high, _tidy(high / 20))


def asked_distance(start: Quantity, limit: Limit | None = None) -> Asked:
    """A distance to a source, from the nearest at which the law of distance holds."""
    begin = min(max(in_unit(start, "length", "mm"), 10.0), 10_000.0)
    return Asked("distance", "Distance", "length", "mm", begin, 10, 10_000, 10, limit)


def asked_day(book: Book, source: Source) -> AskedDay:
    """Another day, from a source's reference date on."""
    today = book.department.computed_for
    last = today + dt.timedelta(days=round(365.25 * _AHEAD))
    return AskedDay("day", "Day", today, min(source.reference_date, today), last)


def later_days(asked: AskedDay) -> tuple[float, ...]:
    """The days a table shows."""
    return tuple(float(days(asked.day) + round(365.25 * years)) for years in LATER)


def asked_room(book: Book, first: str, counted_on: Quantity | None) -> Choice:
    """A room with its volume, and with no more air changes than a practical counts on.

    Args:
        book: the content.
        first: the id of the room it stands at to begin with.
        counted_on: the air changes the practical counts on; None counts on none.
    """
    rooms = [room for room in book.rooms.values() if room.volume is not None and not room.is_open_air]
    none = q("0 per hour")
    options = []
    for room in rooms:
        has = room.air_changes.low if room.air_changes else none
        air = min(has, counted_on) if counted_on is not None else none
        volume = room.volume.low if room.volume else quantity(0, "m**3")
        words = f"{room.name} ({room.volume}, counted with {number_in(air, '1/h'):g} air changes per hour)"
        options.append(Option(words, {"volume": volume, "air changes": air}))
    start = next((place for place, room in enumerate(rooms) if room.id == first), 0)
    return Choice("room", "Room", tuple(options), start)


def activity_of(source: Source, book: Book, day: AskedDay) -> Of:
    """A source's activity on a day the reader names."""
    half_life = nuclide_of(source, book).half_life.value.value
    since = Since(day, source.reference_date)
    activity = Fixed(source.activity.value)
    return Of(activity_after, activity=activity, half_life=Fixed(half_life), elapsed=since)


def register_of(source: Source, book: Book) -> str:
    """What the register says of a source, and how long it lives."""
    half_life = nuclide_of(source, book).half_life.value
    return (
        f"{source.id}: {source.nuclide}, {source.activity} on {written_day(source.reference_date)}, "
        f"half-life {half_life}"
    )


def in_unit(value: Quantity, kind: str, spelling: str) -> float:
    """A quantity as a number in a unit of its kind, without float noise."""
    return float(f"{number_in(value, KINDS[kind].written[spelling]):.10g}")


def _tidy(value: float) -> float:
    """A number with one figure, as a bound or a step of an input should be: 0.045 gives 0.04."""
    return float(f"{value:.1g}")
