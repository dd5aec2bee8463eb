"""What a panel is made of: inputs a reader may change, and the way from them to the numbers of a formula."""

import datetime as dt
import inspect
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Protocol, TypeAlias

from clampstand.limits import bound, keeps
from clampstand.model.days import written_day
from clampstand.model.limit import Limit
from clampstand.rendering.live.compiler import name_of
from clampstand.units import KINDS, Formula, OutOfRange, Quantity, joined, number_in, quantity
from clampstand.units import unit as unit_of

EPOCH = dt.date(1970, 1, 1)
"""Days are counted from here, in UTC, by Python and by the browser alike."""
ONE = quantity(1, "")
Inputs: TypeAlias = Mapping[str, float]
"""What the inputs stand at: a number in its own unit, a day since the epoch, the place of an option."""
Data: TypeAlias = Any
"""What is written as JSON."""


@cache
def in_one(unit: str, other: str) -> float:
    """How many of another unit go into one of a unit."""
    return float(quantity(1, unit).m_as(other))


def days(day: dt.date) -> int:
    """A day as a number of days since the epoch."""
    return (day - EPOCH).days


@dataclass(frozen=True, slots=True)
class Asked:
    """A number the reader may change, within bounds.

    Args:
        name: its name among the inputs.
        label: what it is, in words.
        kind: its kind of quantity.
        spelling: the unit it is asked in.
        start: what it stands at to begin with; low and high: the bounds; step: of the arrows.
        limit: a limit the input itself may break, as a distance does.
    """

    name: str
    label: str
    kind: str
    spelling: str
    start: float
    low: float
    high: float
    step: float
    limit: Limit | None = None

    @property
    def unit(self) -> str:
        """Its unit, as the registry knows it."""
        return KINDS[self.kind].written[self.spelling]

    @property
    def ends(self) -> tuple[float, ...]:
        """The least and the greatest it may be."""
        return self.low, self.high

    def said(self, value: float) -> str:
        """A value with its unit."""
        return joined(f"{value:.10g}", self.spelling)

    def breaks(self, value: float) -> bool:
        """Whether a value breaks the limit of this input."""
        return self.limit is not None and not keeps(quantity(value, self.unit), self.limit)


@dataclass(frozen=True, slots=True)
class AskedDay:
    """A day the reader may change."""

    name: str
    label: str
    day: dt.date
    first: dt.date
    last: dt.date

    @property
    def start(self) -> float:
        """The day it stands at to begin with."""
        return days(self.day)

    @property
    def ends(self) -> tuple[float, ...]:
        """The first and the last day it may be."""
        return days(self.first), days(self.last)

    def said(self, value: float) -> str:
        """A value as a date."""
        return written_day(EPOCH + dt.timedelta(days=value))


@dataclass(frozen=True, slots=True)
class Option:
    """One choice: its words, and the numbers that go with it."""

    words: str
    numbers: Mapping[str, Quantity]


@dataclass(frozen=True, slots=True)
class Choice:
    """One of a few things, such as a room, each with its own numbers."""

    name: str
    label: str
    options: tuple[Option, ...]
    start: float = 0

    @property
    def ends(self) -> tuple[float, ...]:
        """Every place of an option."""
        return tuple(range(len(self.options)))

    def said(self, value: float) -> str:
        """The words of an option."""
        return self.options[int(value)].words


Ask: TypeAlias = Asked | AskedDay | Choice


class Node(Protocol):
    """A number on its way into a formula, in the unit the formula takes."""

    def number(self, unit: str, inputs: Inputs) -> float:
        """What it is worth."""
        ...

    def data(self, unit: str) -> Data:
        """The same for the browser."""
        ...


@dataclass(frozen=True, slots=True)
class Fixed:
    """A number the reader cannot change."""

    value: Quantity

    def number(self, unit: str, inputs: Inputs) -> float:  # noqa: ARG002 - every node is asked alike
        """The number in the formula's unit."""
        return number_in(self.value, unit_of(unit))

    def data(self, unit: str) -> Data:
        """The number itself."""
        return self.number(unit, {})


@dataclass(frozen=True, slots=True)
class Read:
    """What an input says, times a fixed quantity where there is one: a mass times a rate for each mass."""

    asked: Asked
    each: Quantity = ONE

    def _times(self, unit: str) -> float:
        if self.each is ONE:
            return in_one(self.asked.unit, unit)
        return float((quantity(1, self.asked.unit) * self.each).m_as(unit))

    def number(self, unit: str, inputs: Inputs) -> float:
        """The input in the formula's unit."""
        return inputs[self.asked.name] * self._times(unit)

    def data(self, unit: str) -> Data:
        """Where to read it and what to multiply it by."""
        return {"read": self.asked.name, "less": 0, "times": self._times(unit)}


@dataclass(frozen=True, slots=True)
class Since:
    """The time from a day until the day the reader names."""

    asked: AskedDay
    day: dt.date

    def number(self, unit: str, inputs: Inputs) -> float:
        """The time in the formula's unit."""
        return (inputs[self.asked.name] - days(self.day)) * in_one("day", unit)

    def data(self, unit: str) -> Data:
        """Where to read the day, what to take off and what a day is worth."""
        return {"read": self.asked.name, "less": days(self.day), "times": in_one("day", unit)}


@dataclass(frozen=True, slots=True)
class Picked:
    """A number that goes with the option chosen."""

    choice: Choice
    key: str

    def number(self, unit: str, inputs: Inputs) -> float:
        """The option's number in the formula's unit."""
        return number_in(self.choice.options[int(inputs[self.choice.name])].numbers[self.key], unit_of(unit))

    def data(self, unit: str) -> Data:
        """The numbers of all options."""
        numbers = [number_in(option.numbers[self.key], unit_of(unit)) for option in self.choice.options]
        return {"pick": self.choice.name, "from": numbers}


class Of:
    """What a formula makes of other numbers; constants it has defaults for may be left out."""

    def __init__(self, formula: Formula[Any], **arguments: Node) -> None:
        self.formula = formula
        self.arguments = {
            name: arguments[name] if name in arguments else _default(parameter)
            for name, parameter in formula.signature.parameters.items()
        }

    @property
    def value_unit(self) -> str:
        """The unit its value comes in."""
        return self.formula.gives

    def number(self, unit: str, inputs: Inputs) -> float:
        """Its value. Raises OutOfRange where the formula does not hold, ArithmeticError where it has none."""
        numbers = {}
        for name, node in self.arguments.items():
            takes = self.formula.takes[name]
            numbers[name] = node.number(takes.unit, inputs)
            if not takes.admits(numbers[name]):
                raise OutOfRange(f"{name_of(self.formula)}: {name} must be {takes}")
        return float(self.formula.body(**numbers)) * self._times(unit)

    def data(self, unit: str) -> Data:
        """The formula's name and its arguments in order."""
        nodes = [node.data(self.formula.takes[name].unit) for name, node in self.arguments.items()]
        return {"of": name_of(self.formula), "with": nodes, "times": self._times(unit)}

    def _times(self, unit: str) -> float:
        return in_one(self.formula.gives, unit)

    def formulae(self) -> tuple[Formula[Any], ...]:
        """Itself and every formula its arguments come from."""
        inner = (f for node in self.arguments.values() if isinstance(node, Of) for f in node.formulae())
        return (self.formula, *inner)


def _default(parameter: inspect.Parameter) -> Fixed:
    if parameter.default is parameter.empty:
        raise TypeError(f"{parameter.name} is given nothing")
    return Fixed(parameter.default)


def over(limit: Limit) -> str:
    """What is said of a number that breaks a limit. There are no words for one that keeps it."""
    side = "under" if limit.comparator in ("at_least", "more_than") else "over"
    averaged = f" averaged over {limit.averaged_over}" if limit.averaged_over else ""
    unverified = "" if limit.verified == "yes" else ", unverified"
    what = limit.title[:1].lower() + limit.title[1:]
    return f"{side} the limit of {limit.in_words}{averaged} ({limit.layer}{unverified}): {what}"


def limit_data(limit: Limit, unit: str) -> Data:
    """A limit for the browser: on which side it lies, where, and what to say of a number that breaks it."""
    edge = bound(limit)
    if isinstance(edge, int) or not hasattr(edge, "m_as"):
        raise TypeError(f"{limit.key} limits no quantity")
    return {
        "edge": float(edge.m_as(unit)),
        "below": limit.comparator in ("at_least", "more_than"),
        "itself": limit.comparator in ("less_than", "more_than"),
        "words": over(limit),
    }
