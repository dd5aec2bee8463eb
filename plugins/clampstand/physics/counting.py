"""Counting single events: how sure a count is, what background hides, and what a detector ought to see."""

from clampstand.units import OutOfRange, Quantity, Takes, formula, quantity, sqrt

ONE_COUNT = quantity(1, "count")
NO_BACKGROUND = quantity(0, "count/s")

_COUNTS = Takes("count", at_least=0)
_SOME_COUNTS = Takes("count", more_than=0)
_RATE = Takes("count/s", at_least=0)
_TIME = Takes("s", more_than=0)
_SHARE = Takes("", at_least=0, at_most=1)
_ONE = Takes("count", more_than=0)


@formula("count", "u = √N", counts=_COUNTS, one=_ONE)
def count_uncertainty(counts: Quantity, one: Quantity = ONE_COUNT) -> Quantity:
    """Standard uncertainty of a count of random events.

    N in counts. Holds for one count of independent events; for none or few it is a poor guide.
    Source: Poisson statistics; Knoll, Radiation Detection and Measurement, chapter 3.

    >>> print(f"{count_uncertainty(quantity(400, 'count')):.0f~P}")
    20 count
    """
    return sqrt(counts * one)


@formula("", "u/N = 1/√N", counts=_SOME_COUNTS, one=_ONE)
def count_relative_uncertainty(counts: Quantity, one: Quantity = ONE_COUNT) -> Quantity:
    """Standard uncertainty of a count as a share of it.

    N in counts, above zero. Range and source as :func:`count_uncertainty`.

    >>> print(f"{count_relative_uncertainty(quantity(2500, 'count')):.2f~P}")
    0.02
    """
    return sqrt(one / counts)


@formula("count", "N = 1/r²", relative=Takes("", more_than=0, at_most=1), one=_ONE)
def counts_needed(relative: Quantity, one: Quantity = ONE_COUNT) -> Quantity:
    """Counts needed for a relative standard uncertainty r, from above 0 to 1.

    Source: Poisson statistics, :func:`count_relative_uncertainty` turned round.

    >>> print(f"{counts_needed(quantity(1, 'percent')):.0f~P}")
    10000 count
    """
    return one / relative**2


@formula("s", "t = N / R", counts=_COUNTS, rate=Takes("count/s", more_than=0))
def time_for_counts(counts: Quantity, rate: Quantity) -> Quantity:
    """Time to gather a number of counts, on average.

    N in counts, steady rate R in count/s, t in s. Source: definition of a rate.

    >>> print(f"{time_for_counts(quantity(10000, 'count'), quantity(25, 'count/s')):.0f~P}")
    400 s
    """
    return counts / rate


@formula(
    "count/s",
    "R = G/t_G − B/t_B",
    gross_counts=_COUNTS,
    gross_time=_TIME,
    background_counts=_COUNTS,
    background_time=_TIME,
)
def net_rate(
    gross_counts: Quantity, gross_time: Quantity, background_counts: Quantity, background_time: Quantity
) -> Quantity:
    """Count rate of the source alone.

    G, B in counts, times in s; R in count/s, which chance may make negative.
    Source: Knoll, Radiation Detection and Measurement, chapter 3.

    >>> taken = quantity(1500, "count"), quantity(60, "s"), quantity(300, "count"), quantity(600, "s")
    >>> print(f"{net_rate(*taken):.1f~P}")
    24.5 count/s
    """
    return gross_counts / gross_time - background_counts / background_time


@formula(
    "count/s",
    "u(R) = √(G/t_G² + B/t_B²)",
    gross_counts=_COUNTS,
    gross_time=_TIME,
    background_counts=_COUNTS,
    background_time=_TIME,
    one=_ONE,
)
def net_rate_uncertainty(
    gross_counts: Quantity,
    gross_time: Quantity,
    background_counts: Quantity,
    background_time: Quantity,
    one: Quantity = ONE_COUNT,
) -> Quantity:
    """Standard uncertainty of a net count rate, from counting alone.

    G, B in counts, times in s; in count/s. Source: Knoll, chapter 3; JCGM 100:2008 (GUM).

    >>> taken = quantity(1500, "count"), quantity(60, "s"), quantity(300, "count"), quantity(600, "s")
    >>> print(f"{net_rate_uncertainty(*taken):.3f~P}")
    0.646 count/s
    """
    return sqrt(gross_counts * one / gross_time**2 + background_counts * one / background_time**2)


@formula("", "t_G/t_B = √(R_G/R_B)", gross_rate=_RATE, background_rate=Takes("count/s", more_than=0))
def best_time_ratio(gross_rate: Quantity, background_rate: Quantity) -> Quantity:
    """Best ratio of the time with the source to the time on background.

    Rates R_G with the source and R_B without, in count/s. Makes the net rate's uncertainty least for a
    given total. Source: Knoll, Radiation Detection and Measurement, chapter 3.

    >>> print(f"{best_time_ratio(quantity(5, 'count/s'), quantity(0.5, 'count/s')):.2f~P}")
    3.16
    """
    return sqrt(gross_rate / background_rate)


@formula(
    "s",
    "t_G = t / (1 + √(R_B/R_G))",
    total=_TIME,
    gross_rate=Takes("count/s", more_than=0),
    background_rate=_RATE,
)
def best_time_on_source(total: Quantity, gross_rate: Quantity, background_rate: Quantity) -> Quantity:
    """Time to spend with the source, of a total that is shared with background.

    Times in s, rates in count/s. Source: :func:`best_time_ratio`.

    >>> spent = best_time_on_source(quantity(600, "s"), quantity(5, "count/s"), quantity(0.5, "count/s"))
    >>> print(f"{spent:.0f~P}")
    456 s
    """
    return total / (1 + sqrt(background_rate / gross_rate))


@formula("count/s", "n = m / (1 − m·τ)", observed=_RATE, dead_time=Takes("s", at_least=0), one=_ONE)
def true_rate(observed: Quantity, dead_time: Quantity, one: Quantity = ONE_COUNT) -> Quantity:
    """True count rate, mended for a dead time that a lost event does not lengthen (non-paralysable).

    m in count/s, τ in s for each count. Trust it while m·τ is under some 0.3. Refuses m·τ of 1
    and more, which no such counter can show. Source: Knoll, Radiation Detection and Measurement, chapter 4.

    >>> print(f"{true_rate(quantity(850, 'count/s'), quantity(90, 'us')):.1f~P}")
    920.4 count/s
    """
    live = 1 - observed * dead_time / one
    if live <= 0:
        raise OutOfRange("a counter with this dead time cannot show so high a rate")
    return observed / live


@formula("count/s", "m = n / (1 + n·τ)", true=_RATE, dead_time=Takes("s", at_least=0), one=_ONE)
def observed_rate(true: Quantity, dead_time: Quantity, one: Quantity = ONE_COUNT) -> Quantity:
    """Count rate that a counter with a non-paralysable dead time shows.

    n in count/s, τ in s for each count. Source: Knoll, Radiation Detection and Measurement, chapter 4.

    >>> print(f"{observed_rate(quantity(10000, 'count/s'), quantity(100, 'us')):.0f~P}")
    5000 count/s
    """
    return true / (1 + true * dead_time / one)


@formula("", "g = ½·(1 − d/√(d² + r²))", distance=Takes("m", at_least=0), radius=Takes("m", more_than=0))
def window_share(distance: Quantity, radius: Quantity) -> Quantity:
    """Share of a point source's particles that set out towards a round window square on to it.

    Distance d and window radius r in m; 0.5 at the window itself. Holds for a point on the axis.
    Source: solid angle of a cone, divided by 4π.

    >>> print(f"{window_share(quantity(30, 'mm'), quantity(4.5, 'mm')):.4f~P}")
    0.0055
    """
    slant = sqrt(distance**2 + radius**2)
    return radius**2 / (2 * slant * (slant + distance))  # the same, without a difference of near equals


@formula(
    "count/s",
    "R = A · y · g · ε + R_B",
    activity=Takes("Bq", at_least=0),
    per_decay=Takes("1/decay", at_least=0),
    share=_SHARE,
    efficiency=Takes("count", at_least=0),
    background=_RATE,
)
def expected_count_rate(
    activity: Quantity,
    per_decay: Quantity,
    share: Quantity,
    efficiency: Quantity,
    background: Quantity = NO_BACKGROUND,
) -> Quantity:
    """Count rate to expect from a source, background included.

    A in Bq; particles y in 1/decay; share g of them that enter the window; efficiency ε, in counts for a
    particle that enters; background in count/s. Holds before dead time and without absorption or
    backscatter. Source: definitions.

    >>> rate = expected_count_rate(
    ...     quantity(185, "kBq"), quantity(1, "1/decay"), quantity(0.0056, ""), quantity(0.8, "count"))
    >>> print(f"{rate:.0f~P}")
    829 count/s
    """
    return activity * per_decay * share * efficiency + background
