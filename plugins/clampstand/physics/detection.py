"""What a count can prove: decision and detection limits, upper limits, and whether repeated counts agree."""

import math
from collections.abc import Sequence

from clampstand.units import OutOfRange, Quantity, Takes, formula, number_in, quantity, sqrt

ONE_COUNT = quantity(1, "count")
K_95 = quantity(1.6448536269514722, "")  # normal quantile, 5 % one-sided; tests compare it with scipy

_COUNTS = Takes("count", at_least=0)
_K = Takes("", more_than=0)
_ONE = Takes("count", more_than=0)


@formula("count", "L_C = k·√(2B)", background=_COUNTS, k=_K, one=_ONE)
def decision_limit_paired(background: Quantity, k: Quantity = K_95, one: Quantity = ONE_COUNT) -> Quantity:
    """Net counts above which a source is said to be there, when background was counted as long as the sample.

    B in counts; k is 1.645 for one false alarm in twenty: L_C = 2.33 √B. Holds for B of some ten and more.
    Source: Currie, Anal. Chem. 40 (1968) 586.

    >>> print(f"{decision_limit_paired(quantity(100, 'count')):.1f~P}")
    23.3 count
    """
    return k * sqrt(2 * background * one)


@formula("count", "L_C = k·√B", background=_COUNTS, k=_K, one=_ONE)
def decision_limit_known(background: Quantity, k: Quantity = K_95, one: Quantity = ONE_COUNT) -> Quantity:
    """Net counts above which a source is said to be there, when background is known from far longer counting.

    B in counts; k is 1.645 for one false alarm in twenty. Holds for B of some ten and more.
    Source: Currie, Anal. Chem. 40 (1968) 586.

    >>> print(f"{decision_limit_known(quantity(100, 'count')):.1f~P}")
    16.4 count
    """
    return k * sqrt(background * one)


@formula("count", "L_D = k² + 2k·√(2B)", background=_COUNTS, k=_K, one=_ONE)
def detection_limit_paired(background: Quantity, k: Quantity = K_95, one: Quantity = ONE_COUNT) -> Quantity:
    """Net counts that would almost surely be noticed, when background was counted as long as the sample.

    B in counts; with k = 1.645 it is 2.71 + 4.65 √B. Holds for B of some ten and more.
    Source: Currie, Anal. Chem. 40 (1968) 586.

    >>> print(f"{detection_limit_paired(quantity(100, 'count')):.1f~P}")
    49.2 count
    """
    return k**2 * one + 2 * k * sqrt(2 * background * one)


@formula("count", "L_D = k² + 2k·√B", background=_COUNTS, k=_K, one=_ONE)
def detection_limit_known(background: Quantity, k: Quantity = K_95, one: Quantity = ONE_COUNT) -> Quantity:
    """Net counts that would almost surely be noticed, when background is known from far longer counting.

    B in counts; with k = 1.645 it is 2.71 + 3.29 √B, and too low for a background counted once.
    Holds for B of some ten and more. Source: Currie, Anal. Chem. 40 (1968) 586.

    >>> print(f"{detection_limit_known(quantity(100, 'count')):.1f~P}")
    35.6 count
    """
    return k**2 * one + 2 * k * sqrt(background * one)


@formula(
    "Bq",
    "A = L_D / (ε·t)",
    detection_limit=_COUNTS,
    efficiency=Takes("count/decay", more_than=0),
    time=Takes("s", more_than=0),
)
def least_detectable_activity(detection_limit: Quantity, efficiency: Quantity, time: Quantity) -> Quantity:
    """Smallest activity that a count would almost surely notice.

    L_D in counts, efficiency ε in counts per decay (yield and geometry included), t in s.
    Source: Currie, Anal. Chem. 40 (1968) 586.

    >>> wipe = detection_limit_paired(quantity(25, "count"))
    >>> least = least_detectable_activity(wipe, quantity(0.12, "count/decay"), quantity(100, "s"))
    >>> print(f"{least:.2f~P}")
    2.16 Bq
    """
    return detection_limit / (efficiency * time)


def upper_limit(counts: Quantity, confidence: Quantity) -> Quantity:
    """Greatest average that would still give so few counts, with a confidence.

    Solves P(n ≤ N; μ) = 1 − confidence for μ, in counts; N from 0 to 10 000, confidence between 0 and 1.
    No counts at 95 %: 3.00. Source: Poisson statistics, one-sided.

    >>> print(f"{upper_limit(quantity(0, 'count'), quantity(95, 'percent')):.2f~P}")
    3.00 count
    """
    n, left = number_in(counts, "count"), 1 - number_in(confidence, "")
    if not (0 <= n <= 10_000 and n.is_integer() and 0 < left < 1):
        raise OutOfRange("an upper limit takes 0 to 10 000 whole counts and a confidence between 0 and 1")
    low, high = 0.0, n + 20 + 40 * math.sqrt(n + 1)
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if _upper_gamma(n + 1, middle) > left else (low, middle)
    return quantity((low + high) / 2, "count")


def mean_of_counts(counts: Sequence[Quantity]) -> Quantity:
    """Mean of repeated counts of equal length, in counts.

    One count or more, none below zero. Source: JCGM 100:2008 (GUM), 4.2.1.

    >>> print(f"{mean_of_counts([quantity(n, 'count') for n in (41, 36, 49)]):.0f~P}")
    42 count
    """
    numbers = [number_in(c, "count") for c in counts]
    if not numbers or min(numbers) < 0:
        raise OutOfRange("a mean needs one count or more, none below zero")
    return quantity(math.fsum(numbers) / len(numbers), "count")


def spread_of_counts(counts: Sequence[Quantity]) -> Quantity:
    """Standard deviation of repeated counts of equal length, in counts: s² = Σ (N − N̄)²/(n − 1).

    Two counts or more, none below zero. By chance alone it is about √N̄. Source: GUM, 4.2.2.

    >>> print(f"{spread_of_counts([quantity(n, 'count') for n in (41, 36, 49)]):.2f~P}")
    6.56 count
    """
    numbers = [number_in(c, "count") for c in counts]
    if len(numbers) < 2:
        raise OutOfRange("a spread needs two counts or more")
    mean = number_in(mean_of_counts(counts), "count")
    return quantity(math.sqrt(math.fsum((n - mean) ** 2 for n in numbers) / (len(numbers) - 1)), "count")


def dispersion(counts: Sequence[Quantity]) -> Quantity:
    """Chi-square of repeated counts of equal length: whether a counter scatters as chance alone would.

    Σ (N − N̄)²/N̄, to be held against one less than the number of counts. Two counts or more, mean above
    zero. Source: Knoll, Radiation Detection and Measurement, chapter 3.

    >>> runs = [quantity(n, "count") for n in (1002, 968, 1045, 987, 1021, 955, 1010, 1033, 979, 1000)]
    >>> print(f"{dispersion(runs):.2f~P}")
    7.32
    """
    numbers = [number_in(c, "count") for c in counts]
    mean = sum(numbers) / len(numbers) if len(numbers) > 1 else 0.0
    if mean <= 0 or min(numbers) < 0:
        raise OutOfRange("a test of scatter needs two counts or more, none below zero, not all nil")
    return quantity(math.fsum((n - mean) ** 2 for n in numbers) / mean, "")


def chance_of_more(chi_square: Quantity, degrees_of_freedom: int) -> Quantity:
    """Probability that chance alone gives a chi-square as great, or greater.

    Regularised upper incomplete gamma function Q(ν/2, χ²/2); χ² from 0, ν from 1 to 10 000. Under 0.05 or
    above 0.95 look at the counter. Source: Abramowitz and Stegun, 26.4.19.

    >>> print(f"{chance_of_more(quantity(7.318, ''), 9):.3f~P}")
    0.604
    """
    value = number_in(chi_square, "")
    if not (0 <= value < 1e6 and 1 <= degrees_of_freedom <= 10_000):
        raise OutOfRange("chi-square is not below zero, and has at least one degree of freedom")
    return quantity(_upper_gamma(degrees_of_freedom / 2, value / 2), "")


def _upper_gamma(a: float, x: float) -> float:
    """Regularised upper incomplete gamma function: series below a + 1, continued fraction above.

    Source: Abramowitz and Stegun, 6.5.29 and 6.5.31.
    """
    if x <= 0:
        return 1.0
    front = math.exp(a * math.log(x) - x - math.lgamma(a))
    return 1 - front * _series(a, x) if x < a + 1 else front * _fraction(a, x)


def _series(a: float, x: float) -> float:
    term = total = 1 / a
    for n in range(1, 100_000):
        term *= x / (a + n)
        total += term
        if term < total * 1e-16:
            break
    return total


def _fraction(a: float, x: float) -> float:
    """Lentz's way through the continued fraction."""
    b = x + 1 - a
    c, d = 1e300, 1 / b
    total = d
    for n in range(1, 100_000):
        b += 2
        step = n * (a - n)
        d = 1 / (step * d + b)
        c = b + step / c
        total *= c * d
        if abs(c * d - 1) < 1e-15:
            break
    return total
