"""Fits: against numpy and scipy, and what goes wrong without background, weights or the true distance."""

import json
import math
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import curve_fit

from clampstand.physics import fits
from clampstand.units import OutOfRange, Quantity, q, quantity

CASES = json.loads((Path(__file__).parent / "reference_cases.json").read_text("utf-8"))
PROTACTINIUM = next(case["inputs"] for case in CASES if case["id"] == "G-FIT-Pa-T")
TIMES, GROSS = PROTACTINIUM["t_s"], PROTACTINIUM["gross_counts"]


def seconds(values: list[float]) -> list[Quantity]:
    return [quantity(t, "s") for t in values]


def counts(values: list[float]) -> list[Quantity]:
    return [quantity(n, "count") for n in values]


def half_life(background: float) -> float:
    return float(
        fits.half_life_of_counts(seconds(TIMES), counts(GROSS), quantity(background, "count")).value.m_as("s")
    )


def test_background_comes_off_first() -> None:
    """69.76 s with 12 counts of background taken off, 71.17 s without."""
    assert half_life(12) == pytest.approx(69.76, rel=0.002)
    assert half_life(0) == pytest.approx(71.17, rel=0.002)


def test_points_are_weighted_by_what_they_are_worth() -> None:
    """Unweighted, the same counts give 68.84 s."""
    net = np.array(GROSS) - 12
    unweighted = -math.log(2) / np.polyfit(TIMES, np.log(net), 1)[0]
    weighted = -math.log(2) / np.polyfit(TIMES, np.log(net), 1, w=net / np.sqrt(GROSS))[0]
    assert unweighted == pytest.approx(68.84, rel=0.002)
    assert half_life(12) == pytest.approx(weighted, rel=1e-9)


def test_uncertainty_agrees_with_numpy() -> None:
    net = np.array(GROSS) - 12
    (slope, _), covariance = np.polyfit(TIMES, np.log(net), 1, w=net / np.sqrt(GROSS), cov="unscaled")
    ours = fits.half_life_of_counts(seconds(TIMES), counts(GROSS), q("12 counts"))
    assert ours.uncertainty.m_as("s") == pytest.approx(
        math.log(2) * covariance[0, 0] ** 0.5 / slope**2, rel=1e-9
    )


FACES = [0.02, 0.04, 0.07, 0.11, 0.16, 0.25]


def rates_at(faces: list[float], depth: float) -> list[float]:
    return [0.3 / (d + depth) ** 2 for d in faces]


def test_effective_centre_is_found_where_it_was_put() -> None:
    rates = rates_at(FACES, 0.009)
    fitted = fits.effective_centre(
        [quantity(d, "m") for d in FACES],
        [quantity(r, "count/s") for r in rates],
        counts([60 * r for r in rates]),
    )
    assert fitted.value.m_as("cm") == pytest.approx(0.90, rel=1e-9)


def test_effective_centre_and_its_uncertainty_agree_with_scipy() -> None:
    rng = np.random.default_rng(5)
    got = rng.poisson([600 * r for r in rates_at(FACES, 0.009)]).astype(float)
    rates = got / 600
    fitted = fits.effective_centre(
        [quantity(d, "m") for d in FACES], [quantity(r, "count/s") for r in rates], counts(list(got))
    )
    sigma = 0.5 / np.sqrt(rates * got)
    (a, b), cov = curve_fit(lambda d, a, b: a + b * d, FACES, rates**-0.5, sigma=sigma, absolute_sigma=True)
    variance = cov[0, 0] / b**2 + a**2 * cov[1, 1] / b**4 - 2 * a * cov[0, 1] / b**3
    assert fitted.value.m_as("m") == pytest.approx(a / b, rel=1e-5)
    assert fitted.uncertainty.m_as("m") == pytest.approx(variance**0.5, rel=1e-4)


@pytest.mark.parametrize(
    ("times", "gross", "background"),
    [
        ([0, 60], [800, 400], 0),
        ([0, 60, 120], [800, 400, 10], 12),
        ([0, 60, 120], [100, 200, 400], 0),
        ([0, 0, 0], [800, 400, 200], 0),
        ([0, 60, 120], [800, 400, 200], -1),
        ([], [], 0),
    ],
)
def test_counts_that_cannot_be_fitted_are_refused(times: list, gross: list, background: float) -> None:
    with pytest.raises(OutOfRange):
        fits.half_life_of_counts(seconds(times), counts(gross), quantity(background, "count"))


def test_currents_that_cannot_be_fitted_are_refused() -> None:
    for currents, spread in (([80, 40, 0], 0.3), ([80, 40, 20], 0), ([20, 40, 80], 0.3)):
        with pytest.raises(OutOfRange):
            fits.half_life_of_currents(
                seconds([0, 60, 120]), [quantity(i, "pA") for i in currents], quantity(spread, "pA")
            )


@pytest.mark.parametrize("rates", [[25, 100, 400], [100, 25], [100, 25, 0]])
def test_rates_without_a_centre_are_refused(rates: list[float]) -> None:
    distances = [quantity(d, "cm") for d in (4, 9, 19)]
    with pytest.raises(OutOfRange):
        fits.effective_centre(distances, [quantity(r, "count/s") for r in rates], counts([100] * len(rates)))
