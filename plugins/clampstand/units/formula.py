"""A physical formula, written once, and run three ways: on numbers, on quantities, and in the browser.

The body of a formula is plain arithmetic. Called with quantities, it is run on plain numbers in coherent
units, which is quick. :meth:`Formula.proves_its_units` runs the same body on quantities, so that pint finds
a missing factor. Formulae that keep to a small grammar are also compiled to JavaScript for the live pages.
"""

import inspect
import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import update_wrapper
from typing import Generic, ParamSpec, cast

from clampstand.units.registry import Quantity, Unit, number_in, of_unit, unit

P = ParamSpec("P")


_ROUNDING = 1e-12
"""Room for float noise: 4 MeV in joules is not below a least energy of 4 MeV in joules."""


class OutOfRange(ValueError):
    """An argument lies where the formula does not hold."""


@dataclass(frozen=True, slots=True)
class Takes:
    """What an argument of a formula may be: its coherent unit and the range where the formula holds."""

    unit: str
    at_least: float | None = None
    more_than: float | None = None
    at_most: float | None = None

    def admits(self, value: float) -> bool:
        """Whether a number, in the coherent unit, lies in the range, give or take float noise at its ends."""
        return (
            math.isfinite(value)
            and (self.at_least is None or value >= self.at_least - abs(self.at_least) * _ROUNDING)
            and (self.more_than is None or value > self.more_than)
            and (self.at_most is None or value <= self.at_most + abs(self.at_most) * _ROUNDING)
        )

    def __str__(self) -> str:
        said = " and ".join(f"{words} {bound:g}" for words, bound in self._bounds())
        return f"{said or 'finite'} (in {self.unit or '1'})"

    def said_in(self, its_unit: Unit) -> str:
        """The range in words, in a unit of the same kind: ``at least 4 MeV and at most 8 MeV``."""
        own = unit(self.unit)
        said = (f"{words} {of_unit(bound, own).to(its_unit):.6g~P}" for words, bound in self._bounds())
        return " and ".join(said) or "finite"

    def _bounds(self) -> Iterator[tuple[str, float]]:
        bounds = (("at least", self.at_least), ("more than", self.more_than), ("at most", self.at_most))
        return ((words, bound) for words, bound in bounds if bound is not None)


class Formula(Generic[P]):
    """A formula with its units; call it with quantities and it gives a quantity."""

    def __init__(
        self, body: Callable[P, Quantity], gives: str, written: str, takes: dict[str, Takes]
    ) -> None:
        update_wrapper(self, body)
        self.body: Callable[..., Quantity] = body
        self.gives = gives
        self.written = written
        self.takes = takes
        self.signature = inspect.signature(body)
        if set(self.signature.parameters) != set(takes):
            raise TypeError(f"{body.__name__}: every argument needs its unit")
        self._units = {name: unit(t.unit) for name, t in takes.items()}
        self._gives_unit = unit(gives)

    def __call__(self, *args: P.args, **kwargs: P.kwargs) -> Quantity:
        """The formula's value. Raises OutOfRange where it does not hold, UnlikeUnits for a wrong kind."""
        if kwargs or len(args) != len(self.takes):
            bound = self.signature.bind(*args, **kwargs)
            bound.apply_defaults()
            given = bound.arguments
        else:  # the usual case, without a search for names and defaults
            given = dict(zip(self.signature.parameters, args, strict=True))
        numbers = {name: self._number(name, value) for name, value in given.items()}
        result = cast(float, self.body(**numbers))
        if not math.isfinite(result):
            raise OutOfRange(f"{self.body.__name__} has no finite value here")
        return of_unit(result, self._gives_unit)

    def _number(self, name: str, value: Quantity) -> float:
        number = number_in(value, self._units[name])
        if not self.takes[name].admits(number):
            allowed = self.takes[name].said_in(value.units)
            raise OutOfRange(f"{self.body.__name__}: {name} is {value:.3g~P}; it must be {allowed}")
        return number

    def proves_its_units(self, **values: float) -> Quantity:
        """Runs the body on quantities of the declared units, so that pint checks the arithmetic.

        Args:
            values: a number for each argument, in its declared unit.

        Raises:
            UnlikeUnits: the arithmetic does not give the declared unit.
        """
        quantities = {name: of_unit(values[name], self._units[name]) for name in self.takes}
        return self.body(**quantities).to(self._gives_unit)


def formula(gives: str, written: str, **takes: Takes) -> Callable[[Callable[P, Quantity]], Formula[P]]:
    """Makes a formula of a function whose body is arithmetic.

    Args:
        gives: coherent unit of the result.
        written: the formula as a person writes it, for the page: ``"E = C·V²/2"``.
        takes: unit and range of each argument, by name.
    """

    def make(body: Callable[P, Quantity]) -> Formula[P]:
        return Formula(body, gives, written, takes)

    return make


def _pure(x: Quantity, function: Callable[[float], float]) -> Quantity:
    """A function of a pure number, on a plain number or on a quantity without dimension."""
    if isinstance(x, float | int):
        return cast(Quantity, function(x))
    return of_unit(function(x.m_as("")), unit(""))


def exp(x: Quantity) -> Quantity:
    """e to the power of a pure number."""
    return _pure(x, math.exp)


def ln(x: Quantity) -> Quantity:
    """Natural logarithm of a pure number."""
    return _pure(x, math.log)


def sqrt(x: Quantity) -> Quantity:
    """Square root; of a quantity, with the root of its unit."""
    if isinstance(x, float | int):
        return cast(Quantity, math.sqrt(x))
    return cast(Quantity, x**0.5)
