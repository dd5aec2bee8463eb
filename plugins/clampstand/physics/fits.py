"""Straight lines through measured points: half-life of counts or currents, and a detector's true centre."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from clampstand.units import OutOfRange, Quantity, number_in, quantity

LN2 = math.log(2)


class Fitted(NamedTuple):
    """A fitted value and its standard uncertainty."""

    value: Quantity
    uncertainty: Quantity


class _Line(NamedTuple):
    slope: float
    intercept: float
    slope_variance: float
    intercept_variance: float
    covariance: float


def half_life_of_counts(times: Sequence[Quantity], gross: Sequence[Quantity], background: Quantity) -> Fitted:
    """Half-life from counts of equal length, background taken off first.

    Weighted straight line through ln(N − B) against time, each point weighted by (N − B)²/N, the Poisson
    uncertainty of its logarithm. Times in s; counts N and the known background B of one counting period in
    counts. Three points or more, each above background. Counts that decay within one period are weighted as
    at its start. Source: Bevington and Robinson, Data Reduction and Error Analysis, chapter 6; Knoll,
    chapter 3.

    >>> ts = [quantity(t, "s") for t in (0, 60, 120)]
    >>> fit = half_life_of_counts(ts, [quantity(n, "count") for n in (820, 420, 220)], quantity(20, "count"))
    >>> print(f"{fit.value:.1f~P}")
    60.0 s
    """
    off = number_in(background, "count")
    counts = [number_in(n, "count") for n in gross]
    net = [n - off for n in counts]
    if off < 0 or min(net, default=0) <= 0:
        raise OutOfRange("every count must be above the background, and the background not below zero")
    return _half_life(times, net, [y**2 / n for y, n in zip(net, counts, strict=True)])


def half_life_of_currents(
    times: Sequence[Quantity], currents: Sequence[Quantity], uncertainty: Quantity
) -> Fitted:
    """Half-life from ionisation currents read with one and the same uncertainty.

    Weighted straight line through ln I against time, each point weighted by (I/u)². Times in s, currents in
    A. Three points or more, each above zero. Source: Bevington and Robinson, chapter 6.

    >>> ts = [quantity(t, "s") for t in (0, 60, 120)]
    >>> fit = half_life_of_currents(ts, [quantity(i, "pA") for i in (80, 40, 20)], quantity(0.3, "pA"))
    >>> print(f"{fit.value:.1f~P}")
    60.0 s
    """
    amps = [number_in(i, "A") for i in currents]
    spread = number_in(uncertainty, "A")
    if min(amps, default=0) <= 0 or spread <= 0:
        raise OutOfRange("every current, and its uncertainty, must be above zero")
    return _half_life(times, amps, [(i / spread) ** 2 for i in amps])


def effective_centre(
    distances: Sequence[Quantity], rates: Sequence[Quantity], counts: Sequence[Quantity]
) -> Fitted:
    """How far behind their faces source and detector lie, from rates at several distances, in m.

    R = k/(d + c)² makes 1/√R a straight line in d that meets zero at −c. Distances d in m from face to
    window, net rates R in count/s, and the counts N behind each rate, which weigh it: u(1/√R) =
    1/(2√(R·N)). Three points or more, for gamma or for betas that air does not stop. Source: inverse-square
    law; Bevington and Robinson, chapter 6.

    >>> ds = [quantity(d, "cm") for d in (4, 9, 19)]
    >>> rs = [quantity(r, "count/s") for r in (400, 100, 25)]
    >>> fit = effective_centre(ds, rs, [quantity(1000, "count")] * 3)
    >>> print(f"{fit.value.to('cm'):.2f~P}")
    1.00 cm
    """
    ds = [number_in(d, "m") for d in distances]
    rs = [number_in(r, "count/s") for r in rates]
    ns = [number_in(n, "count") for n in counts]
    if min([*rs, *ns], default=0) <= 0 or not len(ds) == len(rs) == len(ns):
        raise OutOfRange("every distance needs a rate and a number of counts above zero")
    line = _line(ds, [r**-0.5 for r in rs], [4 * r * n for r, n in zip(rs, ns, strict=True)])
    if line.slope <= 0:
        raise OutOfRange("the rate does not fall with distance")
    c = line.intercept / line.slope
    spread = line.intercept_variance - 2 * c * line.covariance + c**2 * line.slope_variance
    return Fitted(quantity(c, "m"), quantity(math.sqrt(spread) / line.slope, "m"))


def _half_life(times: Sequence[Quantity], sizes: list[float], weights: list[float]) -> Fitted:
    line = _line([number_in(t, "s") for t in times], [math.log(y) for y in sizes], weights)
    if line.slope >= 0:
        raise OutOfRange("what was measured does not fall, so it has no half-life")
    half_life = -LN2 / line.slope
    return Fitted(
        quantity(half_life, "s"), quantity(half_life * math.sqrt(line.slope_variance) / -line.slope, "s")
    )


def _line(xs: list[float], ys: list[float], weights: list[float]) -> _Line:
    """Weighted least squares, with weights that are the reciprocals of known variances."""
    if not (len(xs) == len(ys) == len(weights) >= 3 and len(set(xs)) >= 2):
        raise OutOfRange("a fit needs three points or more, not all at one place")
    total = math.fsum(weights)
    mean_x = math.fsum(w * x for w, x in zip(weights, xs, strict=True)) / total
    mean_y = math.fsum(w * y for w, y in zip(weights, ys, strict=True)) / total
    spread = math.fsum(w * (x - mean_x) ** 2 for w, x in zip(weights, xs, strict=True))
    slope = math.fsum(w * (x - mean_x) * y for w, x, y in zip(weights, xs, ys, strict=True)) / spread
    return _Line(slope, mean_y - slope * mean_x, 1 / spread, 1 / total + mean_x**2 / spread, -mean_x / spread)
