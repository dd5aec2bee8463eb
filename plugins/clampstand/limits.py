"""Which limit holds here: every pack in force is asked, and the strictest answer wins."""

import datetime as dt
from collections.abc import Iterable
from typing import TypeAlias

from clampstand.findings import Whose
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.units import Amount, Quantity, is_under

Limited: TypeAlias = Quantity | int | Interval
"""What a limit can be set on: a quantity, a count or an age, or a time by the calendar."""

_A_DAY = dt.date(2001, 1, 1)
"""Any day that begins a year will do to compare two intervals."""


FLOOR, CEILING = "floor", "ceiling"
Sort: TypeAlias = tuple[str, str]
"""How a limit is stated: as floor, ceiling or one of the other comparators; and the kind of its quantity."""

_SORTS: dict[str, Sort] = {
    "air.carbon-dioxide-15min": (CEILING, "fraction"),
    "air.carbon-dioxide-8h": (CEILING, "fraction"),
    "air.carbon-dioxide-idlh": (CEILING, "fraction"),
    "chemical.pupil-concentration": (CEILING, "concentration"),
    "electrical.current": (CEILING, "current"),
    "electrical.discharge-wait": (FLOOR, "time"),
    "electrical.people-to-live": (FLOOR, "length"),
    "electrical.series-current": (CEILING, "current"),
    "electrical.stored-charge": (CEILING, "charge"),
    "electrical.stored-energy": (CEILING, "energy"),
    "electrical.test-interval": ("at_most_interval", ""),
    "electrical.touch-voltage": (CEILING, "voltage"),
    "electrical.voltage": (CEILING, "voltage"),
    "fire.drying-time": (FLOOR, "time"),
    "light.laser-class": ("at_most_count", ""),
    "radiation.forceps-length": (FLOOR, "length"),
    "radiation.hand-to-source": (FLOOR, "length"),
    "radiation.handling-age": ("at_least_age", ""),
    "radiation.leak-test-interval": ("at_most_interval", ""),
    "radiation.public-dose": (CEILING, "dose"),
    "radiation.public-skin-dose": (CEILING, "dose"),
    "radiation.source-activity": (CEILING, "activity"),
    "radiation.sources-out": ("at_most_count", ""),
    "radiation.time-out": (CEILING, "time"),
    "radiation.watchers-to-source": (FLOOR, "length"),
}
"""The limits that rules ask for, and the only sort in which each makes sense: a distance has no ceiling."""


def sort_of(limit: Limit) -> Sort:
    """The sort in which a limit is written."""
    direction = {"at_least": FLOOR, "more_than": FLOOR, "at_most": CEILING, "less_than": CEILING}
    kind = "" if limit.amount is None else limit.amount.kind
    return direction.get(limit.comparator, limit.comparator), kind


def expected_sort(key: str, book: Book) -> Sort | None:
    """The sort a limit of a key must have: the one rules ask for, or else that of the first in force.

    A key that says from whom to what, as ``watchers-to-tube``, is of a distance, which has no ceiling.
    """
    if "-to-" in key:
        return FLOOR, "length"
    first = next(iter(book.limits_of_key.get(key, ())), None)
    known = _SORTS.get(key) or _SORTS.get(key.rpartition(".")[0])
    return known or (sort_of(first) if first else None)


def limits_for(key: str, book: Book, **circumstances: str) -> tuple[Limit, ...]:
    """Every limit in force of one key that applies in the circumstances.

    One of another sort than the key asks for is no limit of it, and cannot be compared with the others.

    Args:
        key: what is limited: ``radiation.hand-to-source``.
        book: the content.
        circumstances: what is so here, by the words of ``applies_to``: ``current="dc"``. A limit that asks
            for something other than what is so does not apply; one that asks for nothing always does.
    """
    sort = expected_sort(key, book)
    of_key = (limit for limit in book.limits_of_key.get(key, ()) if sort_of(limit) == sort)
    return tuple(limit for limit in of_key if _applies(limit, circumstances))


def _applies(limit: Limit, circumstances: dict[str, str]) -> bool:
    asked = limit.applies_to.model_dump(exclude_none=True)
    return all(str(value) == circumstances.get(name, str(value)) for name, value in asked.items())


def strictest(limits: Iterable[Limit]) -> Limit | None:
    """The limit that leaves least room: the lowest ceiling or the highest floor; None where there is none."""
    chosen: Limit | None = None
    for limit in limits:
        if chosen is None or _is_stricter(limit, chosen):
            chosen = limit
    return chosen


def _is_stricter(limit: Limit, other: Limit) -> bool:
    if limit.comparator in ("at_least", "more_than", "at_least_age"):
        return _below(bound(other), bound(limit))
    return _below(bound(limit), bound(other))


def is_laxer(limit: Limit, other: Limit) -> bool:
    """Whether a limit allows something that another of the same sort forbids."""
    if bound(limit) != bound(other):
        return _is_stricter(other, limit)
    return other.comparator in ("less_than", "more_than") and limit.comparator != other.comparator


def bound(limit: Limit) -> Limited:
    """The limiting value; of a range, its middle."""
    return limit.value.value if isinstance(limit.value, Amount) else limit.value


def the_limit(key: str, book: Book, **circumstances: str) -> Limit | None:
    """The strictest limit in force of a key, in the circumstances; looked for once in each book."""
    asked = (key, *sorted(circumstances.items()))
    known = book.strictest_known
    if asked not in known:
        known[asked] = strictest(limits_for(key, book, **circumstances))
    return known[asked]


def keeps(value: Limited, limit: Limit) -> bool:
    """Whether a value keeps to a limit; a value equal to it but for float noise counts as equal.

    Raises:
        TypeError: the value is not of the limit's sort (a quantity for a count, say).
        UnlikeUnits: the value is a quantity of another kind.
    """
    edge = bound(limit)
    match limit.comparator:
        case "less_than":
            return _below(value, edge)
        case "more_than":
            return _below(edge, value)
        case "at_least" | "at_least_age":
            return not _below(value, edge)
        case _:
            return not _below(edge, value)


def _below(value: Limited, edge: Limited) -> bool:
    """Whether one value lies below another of the same sort."""
    if isinstance(value, Interval) and isinstance(edge, Interval):
        return value.after(_A_DAY) < edge.after(_A_DAY)
    if isinstance(value, int) and isinstance(edge, int):
        return value < edge
    if isinstance(value, int | Interval) or isinstance(edge, int | Interval):
        raise TypeError(f"{value} cannot be compared with {edge}")
    return is_under(value, edge)


def whose(limit: Limit) -> Whose:
    """Whose rule a limit is, for a finding."""
    unverified = "" if limit.verified == "yes" else " (unverified: read it again before relying on it)"
    says = f"{limit.title}: {limit.in_words}{unverified}"
    return Whose(limit.whose, says, limit.citation, limit.spot, waivable=limit.waivable == "yes")
