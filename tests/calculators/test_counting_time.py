"""Count rates and counting times of the demo department against sums by hand and a numerical solid angle."""

import math

import pytest

from clampstand.calculators.counting_time import counting_time, expected_rate
from clampstand.calculators.worked import CannotWork

TUBE = {"radius": "window radius", "efficiency": "efficiency"}


def by_hand(kilobecquerels: float, photons: float, millimetres: float) -> float:
    """Counts a second for a 9 mm window and 1 %: the solid angle by numerical integration."""
    integrate = pytest.importorskip("scipy.integrate")
    share, _ = integrate.quad(lambda theta: math.sin(theta) / 2, 0, math.atan(9 / millimetres))
    return kilobecquerels * 1000 * photons * share * 0.01


# Activities today by radioactivedecay 0.6.1; photons per decay 0.851 and 1.999 (ENSDF for Cs-137 and Co-60).
@pytest.mark.parametrize(
    ("source", "kilobecquerels", "photons", "place", "millimetres"),
    [
        ("source", 305.8, 0.851, "first distance", 50),
        ("source", 305.8, 0.851, "fifth distance", 200),
        ("S-G1", 20.79, 1.999, "third distance", 100),
    ],
)
def test_rate_agrees_with_a_sum_by_hand(book, source, kilobecquerels, photons, place, millimetres):
    practical = book.practicals["inverse-square-law"]
    (worked,) = expected_rate(practical, book, {"source": source, "distance": place, **TUBE})
    expected = by_hand(kilobecquerels, photons, millimetres)
    assert worked.value.m_as("count/s") == pytest.approx(expected, rel=0.01)


def test_the_old_cobalt_cannot_give_its_counts_within_the_time_of_the_step(book):
    """400 counts at 0.21 counts/s, the rate by hand: more than half an hour."""
    practical = book.practicals["inverse-square-law"]
    given = {"source": "S-G1", "distance": "fifth distance", "counts": "counts wanted", **TUBE}
    (worked,) = counting_time(practical, book, given)
    assert worked.value.m_as("s") == pytest.approx(400 / by_hand(20.79, 1.999, 200), rel=0.01)
    assert worked.value > practical.numbers["fifth time"].value.high


def test_the_caesium_source_can(book):
    practical = book.practicals["inverse-square-law"]
    given = {"distance": "fifth distance", "counts": "counts wanted", **TUBE}
    (worked,) = counting_time(practical, book, given)
    assert worked.value.m_as("s") == pytest.approx(400 / by_hand(305.8, 0.851, 200), rel=0.01)
    assert worked.value < practical.numbers["fifth time"].value.low


def test_a_pure_beta_source_has_no_gamma_rate(book):
    practical = book.practicals["inverse-square-law"]
    with pytest.raises(CannotWork, match="no gamma"):
        expected_rate(practical, book, {"source": "S-B1", "distance": "first distance", **TUBE})
