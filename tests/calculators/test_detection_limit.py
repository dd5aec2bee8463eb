"""Detection limits of the wipe test against Currie's working formula and what chance really does."""

import pytest

from clampstand.calculators.detection_limit import detection_limit

SPARE = {
    "blank": "blank of the spare counter",
    "time": "time on the spare counter",
    "efficiency": "efficiency of the spare counter",
}
WIPE = {"blank": "usual blank", "time": "counting time", "efficiency": "efficiency"}


@pytest.mark.parametrize(
    ("given", "blank", "time", "efficiency"), [(WIPE, 20, 600, 0.25), (SPARE, 150, 300, 0.10)]
)
def test_limit_agrees_with_currie(book, given, blank, time, efficiency):
    """2.71 + 4.65 √B counts, L. A. Currie, Analytical Chemistry 40 (1968) 586."""
    (worked,) = detection_limit(book.practicals["source-store-and-wipe-test"], book, given)
    expected = (2.71 + 4.65 * blank**0.5) / (efficiency * time)
    assert worked.value.m_as("Bq") == pytest.approx(expected, rel=0.005)


def test_such_an_activity_is_noticed_nineteen_times_in_twenty(book):
    """Two Poisson counts and their difference (Skellam), by scipy; the rule is meant for such B."""
    stats = pytest.importorskip("scipy.stats")
    (worked,) = detection_limit(book.practicals["source-store-and-wipe-test"], book, SPARE)
    signal = worked.value.m_as("Bq") * 0.10 * 300
    decision = 2.33 * 150**0.5
    assert stats.skellam.sf(decision, 150, 150) == pytest.approx(0.05, abs=0.01)
    assert stats.skellam.sf(decision, 150 + signal, 150) == pytest.approx(0.95, abs=0.01)
