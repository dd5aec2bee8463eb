"""A room is of a size, and is aired as often, as rooms of a school are.

Why: gas is reckoned from the volume of the room and its air changes. A slip of ten in either lets ten times
as much gas through, and no page would look wrong.

Wrong:
    limits: {room.most.volume: {at_most: 1000 m³}}
    rooms: {lab: {volume: 4000 m³}}

Right:
    limits: {room.most.volume: {at_most: 1000 m³}}
    rooms: {lab: {volume: 500 m³}}

Whose: the department's own bounds, from common practice.
"""

from collections.abc import Iterator

from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, the_limit, whose
from clampstand.model.book import Book

ID = "room-sizes"
SEVERITY = Severity.STOP
BOUNDS = (("volume", "volume"), ("air_changes", "air-changes"))


def check_book(book: Book) -> Iterator[Problem]:
    """Volume and air changes of every room, against the bounds in force."""
    for room in book.rooms.values():
        for field, kind in BOUNDS:
            amount = getattr(room, field)
            for which in ("least", "most"):
                limit = the_limit(f"room.{which}.{kind}", book)
                if amount is not None and limit is not None and not keeps(amount.high, limit):
                    yield Problem(
                        room.at(field),
                        f"{room.name}: {field.replace('_', ' ')} {amount}",
                        found=str(amount),
                        needed=limit.in_words,
                        mend="measure again, and look at the unit",
                        whose=whose(limit),
                    )
