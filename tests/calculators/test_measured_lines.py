"""Lines through readings: against numpy.polyfit and scipy.optimize, and against readings made to order."""

import numpy as np
import pytest
from scipy.optimize import curve_fit

from calculators.lessons import given, with_numbers
from clampstand.calculators.measured_lines import centre_of_detector, half_life_measured
from clampstand.calculators.worked import CannotWork


def readings(practical, calculator: str, word: str, unit: str) -> np.ndarray:
    names = given(practical, calculator)[word].split(", ")
    return np.array([practical.numbers[name].value.value.m_as(unit) for name in names])


def test_the_effective_centre_agrees_with_numpy(book):
    """numpy.polyfit, weighted by the reciprocals of u(1/√R) = 1/(2√(R·N)), covariance unscaled."""
    practical = book.practicals["inverse-square-law"]
    distances = readings(practical, "effective-centre", "distances", "mm")
    counts = readings(practical, "effective-centre", "counts", "count")
    rates = counts / readings(practical, "effective-centre", "times", "s")
    weights = 2 * np.sqrt(rates * counts)
    (slope, start), spread = np.polyfit(distances, rates**-0.5, 1, w=weights, cov="unscaled")
    turned = np.array([-start / slope**2, 1 / slope])
    (worked,) = centre_of_detector(practical, book, given(practical, "effective-centre"))
    assert worked.value.m_as("mm") == pytest.approx(start / slope, rel=1e-6)
    assert float(worked.within.split("\u00a0")[0]) == pytest.approx(
        np.sqrt(turned @ spread @ turned), rel=0.06
    )


def test_readings_made_with_a_depth_of_twelve_millimetres_give_it_back(book):
    """R = 80 000/(d + 12)² counts a second with d in mm, counted 1000 s."""
    distances = (50, 100, 200)
    numbers = {f"d{d}": f"{d} mm" for d in distances} | {"t": "1000 s"}
    numbers |= {f"n{d}": f"{80e6 / (d + 12) ** 2:.6f} counts" for d in distances}
    practical = with_numbers(book.practicals["inverse-square-law"], **numbers)
    asked = {"distances": "d50, d100, d200", "counts": "n50, n100, n200", "times": "t, t, t"}
    with pytest.raises(CannotWork, match="every distance"):
        centre_of_detector(practical, book, asked | {"times": "t, t"})
    (worked,) = centre_of_detector(practical, book, asked)
    assert worked.value.m_as("mm") == pytest.approx(12, rel=1e-5)


def test_the_half_life_agrees_with_scipy(book):
    """scipy.optimize.curve_fit of the logarithm, with absolute uncertainties √N/(N − B)."""
    practical = book.practicals["protactinium-half-life"]
    counts = readings(practical, "half-life-of-counts", "counts", "count")
    times, net = 30.0 * np.arange(len(counts)), counts - 5
    (_, half_life), spread = curve_fit(
        lambda t, start, half: start - t * np.log(2) / half,
        times,
        np.log(net),
        p0=(6, 70),
        sigma=np.sqrt(counts) / net,
        absolute_sigma=True,
    )
    (worked,) = half_life_measured(practical, book, given(practical, "half-life-of-counts"))
    assert worked.value.m_as("s") == pytest.approx(half_life, rel=1e-5)
    assert float(worked.within.split("\u00a0")[0]) == pytest.approx(np.sqrt(spread[1, 1]), rel=0.05)


def test_the_example_lies_as_near_the_published_half_life_as_it_says(book):
    """ICRP Publication 107: 1.17 min. The example's own uncertainty, taken twice, reaches it."""
    practical = book.practicals["protactinium-half-life"]
    (worked,) = half_life_measured(practical, book, given(practical, "half-life-of-counts"))
    assert abs(worked.value.m_as("s") - 70.2) < 2 * float(worked.within.split("\u00a0")[0])


def test_counts_below_the_background_are_refused(book):
    numbers = {"a": "9 counts", "b": "6 counts", "c": "4 counts", "blank": "5 counts", "step": "30 s"}
    practical = with_numbers(book.practicals["protactinium-half-life"], **numbers)
    with pytest.raises(CannotWork, match="above the background"):
        half_life_measured(practical, book, {"counts": "a, b, c", "every": "step", "background": "blank"})
