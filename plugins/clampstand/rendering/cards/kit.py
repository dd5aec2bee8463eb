"""The kit of a lesson as a walk: place by place, how many of what."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from clampstand.calculators.kit_totals import KitTotal
from clampstand.model.kit import Item
from clampstand.rendering.contents import Contents
from clampstand.rendering.prose import unbroken
from clampstand.rendering.templating import total_amount


@dataclass(frozen=True, slots=True)
class Fetched:
    """So many, or so much, of one thing."""

    how_many: str
    what: str


@dataclass(frozen=True, slots=True)
class Place:
    """A room and a shelf in it, and what to fetch from there."""

    room: str
    shelf: str
    things: tuple[Fetched, ...]


def kit_by_place(totals: Iterable[KitTotal], contents: Contents) -> list[Place]:
    """The kit by the places it is kept in, so that a person with the card walks to each place once.

    What only the preparation needs is left out: it is on the preparation page. So is what is made only later.
    """
    places: dict[tuple[str, str], dict[tuple[str, bool], list[KitTotal]]] = {}
    for total in totals:
        if total.line.phase != "prepare" and not (total.line.made_here and total.line.phase):
            there = places.setdefault(_place_of(total, contents), {})
            there.setdefault((total.line.item, total.line.phase == "clear_up"), []).append(total)
    return [
        Place(room, shelf, tuple(_all_fetched(there, contents))) for (room, shelf), there in places.items()
    ]


def _all_fetched(there: dict[tuple[str, bool], list[KitTotal]], contents: Contents) -> Iterator[Fetched]:
    """Everything of one place; what only clearing up needs does not lie about before, so it is marked."""
    for (_, only_to_clear_up), lines in there.items():
        for one in _fetched(lines, contents):
            yield Fetched(one.how_many, f"{one.what} (only to clear up)") if only_to_clear_up else one


def _place_of(total: KitTotal, contents: Contents) -> tuple[str, str]:
    """The room and the shelf; what else is said about the place is on the preparation page."""
    item = contents.book.kit.get(total.line.item)
    if item is None:
        return "", ""
    room = contents.book.rooms.get(item.kept_in or "")
    return room.name if room else "", (item.kept or "").split(",", 1)[0]


def _fetched(lines: Sequence[KitTotal], contents: Contents) -> list[Fetched]:
    """What to fetch of one item: counted lines added up, measured ones one by one."""
    item = contents.book.kit.get(lines[0].line.item)
    counted = sum(total.count for total in lines if total.amount is None)
    fetched = [Fetched(str(counted), _called(item, counted, lines[0].line.item))] if counted else []
    measured = (total for total in lines if total.amount is not None)
    return fetched + [
        Fetched(total_amount(total), _named(item, total.line.item) + _each(total)) for total in measured
    ]


def _named(item: Item | None, its_id: str) -> str:
    return its_id if item is None else item.name


def _called(item: Item | None, count: int, its_id: str) -> str:
    if item is None:
        return its_id
    return item.called(count)


def _each(total: KitTotal) -> str:
    """How it is shared out, where it is."""
    return f" ({total.count}\u00a0×\u00a0{unbroken(str(total.line.amount))})" if total.count > 1 else ""


def usual_room(places: Sequence[Place]) -> str:
    """The room most of the kit is kept in: named once, over the list."""
    counted = Counter(place.room for place in places for _ in place.things if place.room)
    return max(counted, key=lambda room: (counted[room], room)) if counted else ""
