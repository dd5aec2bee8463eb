"""The ranges in which declared numbers and amounts may lie, for the rules that judge them."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Route
from clampstand.units import Amount, Quantity, is_over, is_under

TOO_FAR = 10
"""From this factor on a range lets a slip by one figure pass."""


@dataclass(frozen=True, slots=True)
class Ranged:
    """A value with the range it says it may lie in, and where both are written."""

    name: str
    value: Amount
    range: Amount
    route: Route
    """Of the value."""
    of_range: Route


def ranged(lesson: Lesson) -> Iterator[Ranged]:
    """Every declared number and every amount of the kit list that says its range."""
    practical = lesson.practical
    for name, number in practical.numbers.items():
        for word in ("may_be", "lies_in"):
            said: Amount | None = getattr(number, word)
            if said is not None:
                route = ("numbers", name)
                yield Ranged(name, number.value, said, (*route, "value"), (*route, word))
    for index, line in enumerate(practical.kit):
        if line.may_be is not None and line.amount is not None:
            route_of_line = ("kit", index)
            yield Ranged(
                f"amount of {line.item}",
                line.amount,
                line.may_be,
                (*route_of_line, "amount"),
                (*route_of_line, "may_be"),
            )


def lies_in(value: Amount, range_: Amount) -> bool:
    """Whether all of a value lies in a range of its kind; its ends and float noise belong to it."""
    if value.kind != range_.kind:
        return False
    return not is_under(value.low, range_.low) and not is_over(value.high, range_.high)


def far_apart(value: Amount, other: Amount) -> bool:
    """Whether an end of an amount is at least ten times one of another of its kind, or at most a tenth."""
    return any(
        _is_far(abs(one), abs(another)) or _is_far(abs(another), abs(one))
        for one in (value.low, value.high)
        for another in (other.low, other.high)
    )


def _is_far(large: Quantity, small: Quantity) -> bool:
    return not is_under(large, small * TOO_FAR)
