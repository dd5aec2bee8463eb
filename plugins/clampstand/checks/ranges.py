"""The ranges in which declared numbers and amounts may lie, for the rules that judge them."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Route
from clampstand.units import Amount, is_over, is_under, number_in

TOO_FAR = 10
"""From this factor on a range lets a slip by one figure pass."""

_NOISE = 1e-9
"""Ten times a number is ten times it, whatever the units it is written in."""


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
    """Every declared number, rate of a release and amount of the kit list that says its range."""
    practical = lesson.practical
    route: Route
    for name, number in practical.numbers.items():
        for word in ("may_be", "lies_in"):
            said: Amount | None = getattr(number, word)
            if said is not None:
                yield Ranged(name, number.value, said, ("numbers", name, "value"), ("numbers", name, word))
    for index, release in enumerate(practical.releases):
        if release.may_be is not None and release.rate is not None:
            name, route = f"the release of {release.item}", ("releases", index)
            yield Ranged(name, release.rate, release.may_be, (*route, "rate"), (*route, "may_be"))
    for index, line in enumerate(practical.kit):
        if line.may_be is not None and line.amount is not None:
            name, route = f"amount of {line.item}", ("kit", index)
            yield Ranged(name, line.amount, line.may_be, (*route, "amount"), (*route, "may_be"))


def lies_in(value: Amount, range_: Amount) -> bool:
    """Whether all of a value lies in a range of its kind; its ends and float noise belong to it."""
    if value.kind != range_.kind:
        return False
    return not is_under(value.low, range_.low) and not is_over(value.high, range_.high)


def far_apart(value: Amount, other: Amount) -> bool:
    """Whether an end of an amount is at least ten times one of another of its kind, or at most a tenth."""
    unit = value.low.units
    ours = [abs(number_in(end, unit)) for end in (value.low, value.high)]
    theirs = [abs(number_in(end, unit)) for end in (other.low, other.high)]
    far = TOO_FAR * (1 - _NOISE)
    return any(one >= far * another or another >= far * one for one in ours for another in theirs)
