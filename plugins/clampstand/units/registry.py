"""The one pint registry: a small set of units in which unlike things cannot be mixed."""

from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import Any, TypeAlias

import pint
from pint.facets.plain import PlainQuantity, PlainUnit
from pint.util import UnitsContainer

Quantity: TypeAlias = PlainQuantity[Any]
Unit: TypeAlias = PlainUnit

UnlikeUnits = pint.DimensionalityError

_registry: pint.UnitRegistry[float] = pint.UnitRegistry(
    str(files(__package__) / "units.txt"),
    autoconvert_offset_to_baseunit=False,
    on_redefinition="raise",
)


@cache
def unit(expression: str) -> Unit:
    """The unit named by an expression such as ``"uGy m**2 / (GBq h)"``.

    For expressions written by developers only: a person's text goes through
    :func:`clampstand.units.amounts.read_amount` and never reaches pint's parser.
    """
    return _registry.parse_units(expression)


def quantity(value: float, expression: str) -> Quantity:
    """A quantity from a number and a unit expression written by a developer.

    >>> quantity(5, "uCi") == quantity(185, "kBq")
    True
    >>> quantity(5, "kHz").check("Bq")
    False
    """
    return _registry.Quantity(value, unit(expression))


def of_unit(value: float, its_unit: Unit) -> Quantity:
    """A quantity from a number and a unit object already looked up."""
    return _registry.Quantity(value, its_unit)


def number_in(value: Quantity, its_unit: Unit | str) -> float:
    """The number of a quantity in a unit: what pint's ``m_as`` gives, with the factor looked up once.

    Args:
        value: the quantity.
        its_unit: a unit, or an expression of one written by a developer.

    Raises:
        UnlikeUnits: the quantity is of another kind.

    >>> number_in(quantity(5, "uCi"), "kBq")
    185.0
    """
    wanted = unit(its_unit) if isinstance(its_unit, str) else its_unit
    # Pint's public ``units`` makes a new object at every look, which costs ten times what is looked up here.
    factor = _factor(value._units, wanted._units)
    return float(value.m_as(wanted)) if factor is None else float(value.magnitude) * factor


def added_up(values: Iterable[Quantity], expression: str) -> Quantity:
    """The sum of quantities of one kind, in a unit written by a developer; nought of it for none.

    Raises:
        UnlikeUnits: one of them is of another kind.
    """
    return quantity(sum(number_in(value, expression) for value in values), expression)


@cache
def _factor(source: UnitsContainer, target: UnitsContainer) -> float | None:
    """What turns a number in one unit into another; None where it is no mere factor, as for °C."""
    one, two = (_registry.Quantity(number, source).m_as(target) for number in (1.0, 2.0))
    return float(one) if two == 2 * one else None
