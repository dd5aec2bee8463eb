"""A published table of one quantity against another, read between its rows and never beyond them."""

import math
from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from itertools import pairwise

from clampstand.units.formula import OutOfRange
from clampstand.units.registry import Quantity, number_in, quantity


@dataclass(frozen=True, slots=True)
class Curve:
    """Rows of positive plain numbers under two declared units, read log-log.

    Two rows may share an x: the two sides of an absorption edge. On the edge the upper side is taken.

    >>> lead = Curve("MeV", "cm**2/g", ((0.6, 0.1248), (0.8, 0.0887)))
    >>> round(lead.at(quantity(662, "keV")).magnitude, 4)
    0.1111
    """

    x_unit: str
    y_unit: str
    rows: tuple[tuple[float, float], ...]

    def __post_init__(self) -> None:
        xs = [x for x, _ in self.rows]
        if len(self.rows) < 2 or xs != sorted(xs):
            raise ValueError("a curve needs two rows or more, in rising order")
        if not all(math.isfinite(v) and v > 0 for row in self.rows for v in row):
            raise ValueError("a curve's numbers are positive and finite")

    def at(self, x: Quantity) -> Quantity:
        """The y of an x. Raises OutOfRange beyond the table's ends."""
        return quantity(self.number_at(number_in(x, self.x_unit)), self.y_unit)

    def number_at(self, value: float) -> float:
        """The y of an x, both as numbers in the table's own units. Raises OutOfRange beyond its ends."""
        first, last = self.rows[0][0], self.rows[-1][0]
        if not first <= value <= last:
            raise OutOfRange(
                f"the table runs from {first:g} to {last:g} {self.x_unit}, and this is {value:.4g}"
            )
        upper = min(bisect_right(self.rows, value, key=_x), len(self.rows) - 1)
        return _between(self.rows[upper - 1], self.rows[upper], value)

    def where(self, y: Quantity) -> Quantity:
        """The x of a y, for a table that rises. Raises OutOfRange beyond the table's ends."""
        value = number_in(y, self.y_unit)
        turned = [(b, a) for a, b in self.rows]
        ys = [row[0] for row in turned]
        if any(first >= second for first, second in pairwise(ys)):
            raise OutOfRange("the table does not rise, so a value may belong to two rows")
        if not ys[0] <= value <= ys[-1]:
            ends = f"from {ys[0]:g} to {ys[-1]:g} {self.y_unit}"
            raise OutOfRange(f"the table runs {ends}, and this is {y:.3g~P}")
        upper = max(bisect_left(ys, value), 1)
        return quantity(_between(turned[upper - 1], turned[upper], value), self.x_unit)


def _x(row: tuple[float, float]) -> float:
    return row[0]


def _between(low: tuple[float, float], high: tuple[float, float], x: float) -> float:
    """The y of an x between two rows, on the straight line through their logarithms."""
    share = math.log(x / low[0]) / math.log(high[0] / low[0])
    return math.exp(math.log(low[1]) + share * math.log(high[1] / low[1]))
