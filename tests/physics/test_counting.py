"""Counting and detection: against scipy's distributions, by simulation-free laws, and past 3.29 and 4.65."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats
from scipy.integrate import dblquad
from scipy.optimize import minimize_scalar

from clampstand.physics import counting, detection
from clampstand.units import OutOfRange, q, quantity

rates = st.floats(0.01, 1e4)


def count(n: float) -> object:
    return quantity(n, "count")


@given(st.integers(1, 10**9))
def test_relative_uncertainty_is_the_uncertainty_over_the_count(n: int) -> None:
    share = counting.count_uncertainty(count(n)) / count(n)
    assert counting.count_relative_uncertainty(count(n)).magnitude == pytest.approx(share.m_as(""), rel=1e-12)
    assert counting.counts_needed(share).m_as("count") == pytest.approx(n, rel=1e-9)


@given(rates, st.floats(0.001, 0.99))
def test_best_split_of_time_gives_the_least_uncertainty(gross: float, share: float) -> None:
    background = gross * share

    def variance(on_source: float) -> float:
        return gross / on_source + background / (600 - on_source)

    best = minimize_scalar(variance, bounds=(1, 599), method="bounded", options={"xatol": 1e-9})
    ours = counting.best_time_on_source(
        q("600 s"), quantity(gross, "count/s"), quantity(background, "count/s")
    ).m_as("s")
    assert variance(ours) <= best.fun * (1 + 1e-9)
    ratio = counting.best_time_ratio(quantity(gross, "count/s"), quantity(background, "count/s")).magnitude
    assert ours / (600 - ours) == pytest.approx(ratio, rel=1e-9)


@given(st.floats(0, 1e5), st.floats(0, 1e-3))
def test_dead_time_undone_gives_the_true_rate(rate: float, seconds: float) -> None:
    observed = counting.observed_rate(quantity(rate, "count/s"), quantity(seconds, "s"))
    back = counting.true_rate(observed, quantity(seconds, "s"))
    assert back.m_as("count/s") == pytest.approx(rate, rel=1e-6, abs=1e-9)


def test_net_rate_may_be_negative_by_chance() -> None:
    assert counting.net_rate(count(20), q("60 s"), count(300), q("600 s")).magnitude < 0


@given(rates, st.floats(1, 1e6))
def test_time_for_counts_is_counts_over_rate(rate: float, counts: float) -> None:
    t = counting.time_for_counts(count(counts), quantity(rate, "count/s"))
    assert (t * quantity(rate, "count/s")).m_as("count") == pytest.approx(counts, rel=1e-12)


@pytest.mark.parametrize("distance", [1, 10, 300])
def test_window_share_agrees_with_an_integral_over_the_window(distance: float) -> None:
    radius = 4.5

    def flux(r: float, _: float) -> float:
        return r * distance / (4 * math.pi * (distance**2 + r**2) ** 1.5)

    integral = dblquad(flux, 0, 2 * math.pi, 0, radius)[0]
    ours = counting.window_share(quantity(distance, "mm"), quantity(radius, "mm")).magnitude
    assert ours == pytest.approx(integral, rel=1e-6)


def test_window_share_at_the_window_is_one_half_and_far_off_is_area_over_sphere() -> None:
    assert counting.window_share(q("0 mm"), q("5 mm")).magnitude == 0.5
    far = counting.window_share(q("1000 m"), q("1 mm")).magnitude
    assert far == pytest.approx((1e-3) ** 2 / (4 * 1000**2), rel=1e-9)


def test_expected_rate_adds_background() -> None:
    given_source = q("185 kBq"), quantity(1, "1/decay"), quantity(0.005, ""), quantity(0.5, "count")
    bare_rate = counting.expected_count_rate(*given_source)
    with_background = counting.expected_count_rate(*given_source, quantity(0.4, "count/s"))
    assert bare_rate.m_as("count/s") == pytest.approx(462.5)
    assert (with_background - bare_rate).m_as("count/s") == pytest.approx(0.4)


def test_3_29_and_4_65_depend_on_how_background_was_counted() -> None:
    """For 100 counts of background: 49.2 when it was counted once as long, 35.6 when it is well known."""
    assert detection.detection_limit_paired(count(100)).magnitude == pytest.approx(49.2, rel=0.005)
    assert detection.detection_limit_known(count(100)).magnitude == pytest.approx(35.6, rel=0.005)
    assert detection.decision_limit_paired(count(100)).magnitude == pytest.approx(23.3, rel=0.005)
    assert detection.decision_limit_known(count(100)).magnitude == pytest.approx(16.4, rel=0.005)
    four = (detection.detection_limit_paired(count(1e6)) - detection.detection_limit_paired(count(0))) / 1000
    three = (detection.detection_limit_known(count(1e6)) - detection.detection_limit_known(count(0))) / 1000
    assert four.magnitude == pytest.approx(4.65, abs=0.005)
    assert three.magnitude == pytest.approx(3.29, abs=0.005)


@pytest.mark.parametrize("background", [100, 1000])
def test_a_blank_passes_the_decision_limit_once_in_twenty(background: float) -> None:
    limit = detection.decision_limit_paired(count(background)).magnitude
    alarms = stats.skellam.sf(limit, background, background)
    assert alarms == pytest.approx(0.05, abs=0.006)


def test_least_activity_falls_with_time_and_efficiency() -> None:
    limit = detection.detection_limit_paired(count(25))
    once = detection.least_detectable_activity(limit, quantity(0.12, "count/decay"), q("100 s"))
    twice = detection.least_detectable_activity(limit, quantity(0.24, "count/decay"), q("100 s"))
    assert once.m_as("Bq") == pytest.approx(2 * twice.m_as("Bq"))


@pytest.mark.parametrize("n", [0, 1, 3, 25, 400, 9000])
@pytest.mark.parametrize("confidence", [0.5, 0.95, 0.999])
def test_upper_limit_agrees_with_scipy(n: int, confidence: float) -> None:
    ours = detection.upper_limit(count(n), quantity(confidence, "")).magnitude
    assert ours == pytest.approx(stats.chi2.ppf(confidence, 2 * (n + 1)) / 2, rel=1e-6)


@pytest.mark.parametrize(("n", "confidence"), [(-1, 0.95), (0.5, 0.95), (0, 1.0), (0, 0.0), (10_001, 0.95)])
def test_upper_limit_of_nonsense_is_refused(n: float, confidence: float) -> None:
    with pytest.raises(OutOfRange):
        detection.upper_limit(count(n), quantity(confidence, ""))


@given(st.floats(0, 2000), st.integers(1, 500))
def test_chance_of_more_agrees_with_scipy(chi_square: float, degrees: int) -> None:
    ours = detection.chance_of_more(quantity(chi_square, ""), degrees).magnitude
    assert ours == pytest.approx(stats.chi2.sf(chi_square, degrees), rel=1e-8, abs=1e-12)


def test_chi_square_of_equal_counts_is_nought() -> None:
    assert detection.dispersion([count(100)] * 5).magnitude == 0
    assert detection.chance_of_more(quantity(0, ""), 4).magnitude == 1


@pytest.mark.parametrize("counts", [[], [5], [0, 0], [-1, 5]])
def test_dispersion_of_too_little_is_refused(counts: list[float]) -> None:
    with pytest.raises(OutOfRange):
        detection.dispersion([count(n) for n in counts])


@pytest.mark.parametrize(("chi_square", "degrees"), [(-1, 3), (1, 0), (math.nan, 3)])
def test_chance_of_nonsense_is_refused(chi_square: float, degrees: int) -> None:
    with pytest.raises(OutOfRange):
        detection.chance_of_more(quantity(chi_square, ""), degrees)
