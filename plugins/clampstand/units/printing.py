"""Quantities as the page prints them: sensible figures, rounded towards safety, unbreakable spaces."""

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal
from functools import cache
from typing import Literal

from clampstand.units.kinds import KINDS
from clampstand.units.registry import Quantity, number_in, of_unit, unit

Towards = Literal["nearest", "up", "down"]

_ROUNDINGS = {"nearest": ROUND_HALF_EVEN, "up": ROUND_CEILING, "down": ROUND_FLOOR}
_NO_SPACE_BEFORE = ("°", "%")

# For each kind the units to choose from when the page may pick one, smallest first.
_LADDERS: dict[str, tuple[str, ...]] = {
    "length": ("nm", "µm", "mm", "m"),
    "time": ("ns", "µs", "ms", "s", "min", "h", "days", "years"),
    "volume": ("mL", "L", "m³"),
    "mass": ("µg", "mg", "g", "kg"),
    "activity": ("Bq", "kBq", "MBq", "GBq"),
    "absorbed dose": ("nGy", "µGy", "mGy", "Gy"),
    "absorbed dose rate": ("nGy/h", "µGy/h", "mGy/h"),
    "dose": ("pSv", "nSv", "µSv", "mSv", "Sv"),
    "skin dose": ("pSv", "nSv", "µSv", "mSv", "Sv"),
    "dose rate": ("nSv/h", "µSv/h", "mSv/h"),
    "current": ("fA", "pA", "nA", "µA", "mA", "A"),
    "voltage": ("µV", "mV", "V", "kV", "MV"),
    "charge": ("pC", "nC", "µC", "mC", "C"),
    "capacitance": ("pF", "nF", "µF", "mF", "F"),
    "resistance": ("mΩ", "Ω", "kΩ", "MΩ", "GΩ", "TΩ"),
    "energy": ("µJ", "mJ", "J", "kJ", "MJ"),
}


_EXACT_FIGURES = 12
"""What is left of a number once float noise is gone: 100.00000000000001 rounded up is 100, not 110."""


def digits(value: float, figures: int, towards: Towards = "nearest") -> str:
    """A number with so many significant figures, grouped by thin spaces from five digits.

    >>> digits(29049.3, 3), digits(0.0055, 2), digits(-78.46, 3)
    ('29\u202f000', '0.0055', '−78.5')
    >>> digits(100.00000000000001, 2, "up"), digits(100.1, 2, "up")
    ('100', '110')
    """
    if value == 0:
        return "0"
    exact = Decimal(f"{value:.{_EXACT_FIGURES}g}")
    place = exact.adjusted() - figures + 1
    rounded = exact.quantize(Decimal(1).scaleb(place), rounding=_ROUNDINGS[towards])
    text = f"{rounded:f}"
    whole, _, part = text.lstrip("-").partition(".")
    if len(whole) >= 5:
        whole = f"{int(whole):,}".replace(",", "\u202f")
    return ("−" if rounded < 0 else "") + whole + (f".{part}" if part else "")


def joined(number: str, spelling: str) -> str:
    """A number and its unit with a space that does not break, and none before a degree sign."""
    if not spelling:
        return number
    return number + ("" if spelling == "°" else "\u00a0") + spelling


def shown(value: Quantity, spelling: str, kind: str, figures: int = 3, towards: Towards = "nearest") -> str:
    """A quantity in a chosen unit of its kind: ``shown(q("0.1 m"), "mm", "length")`` is ``100 mm``."""
    magnitude = number_in(value, unit(KINDS[kind].written[spelling]))
    return joined(digits(magnitude, figures, towards), spelling)


def ladder(kind: str) -> tuple[str, ...]:
    """The units of a kind that a page may choose from, smallest first.

    >>> ladder("charge")
    ('pC', 'nC', 'µC', 'mC', 'C')
    """
    return _LADDERS.get(kind) or (next(iter(KINDS[kind].written)),)


def best_spelling(value: Quantity, kind: str, figures: int = 3, among: tuple[str, ...] = ()) -> str:
    """The unit of a kind, or among a few, that gives a number from 1 up once it is rounded.

    Nothing is told in the unit people think in, ``0 s`` and not ``0 ns``.
    """
    choice = among or ladder(kind)
    size = abs(number_in(value, unit(KINDS[kind].coherent)))
    if size == 0:
        return next((s for s in choice if _per_coherent(kind, s) == 1), choice[0])
    fits = [s for s in choice if size * _per_coherent(kind, s) >= 1 - 0.5 * 10.0**-figures]
    return fits[-1] if fits else choice[0]


@cache
def _per_coherent(kind: str, spelling: str) -> float:
    """How many of a unit go into the coherent unit of its kind."""
    return float(of_unit(1, unit(KINDS[kind].coherent)).m_as(unit(KINDS[kind].written[spelling])))


def shown_best(
    value: Quantity, kind: str, figures: int = 3, towards: Towards = "nearest", among: tuple[str, ...] = ()
) -> str:
    """A quantity in the unit that suits its size: ``shown_best(q("0.0001 A"), "current")`` is ``100 µA``."""
    return shown(value, best_spelling(value, kind, figures, among), kind, figures, towards)


def bare(value: float) -> Quantity:
    """A pure number as a quantity."""
    return of_unit(value, unit(""))
