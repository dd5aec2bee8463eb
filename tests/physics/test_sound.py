"""Noise: levels add as energies, and a day is eight hours."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clampstand.physics import sound
from clampstand.units import OutOfRange, q, quantity

LEVELS = st.floats(min_value=30, max_value=130)


@pytest.mark.parametrize(
    ("level", "time"),
    [("85 dB(A)", "8 h"), ("88 dB(A)", "4 h"), ("91 dB(A)", "2 h"), ("94 dB(A)", "1 h")],
)
def test_three_decibels_more_for_half_the_time_are_one_exposure(level: str, time: str) -> None:
    """The exchange rate of Directive 2003/10/EC: 3 dB for a factor of two."""
    assert sound.daily_exposure(q(level), q(time)).m_as("dBA") == pytest.approx(85, abs=0.05)


@given(levels=st.lists(LEVELS, min_size=1, max_size=6))
def test_sum_is_that_of_the_energies(levels: list[float]) -> None:
    total = sound.sum_of_levels([quantity(level, "dBA") for level in levels]).m_as("dBA")
    assert total == pytest.approx(10 * math.log10(sum(10 ** (level / 10) for level in levels)))
    assert max(levels) <= total + 1e-9 <= max(levels) + 10 * math.log10(len(levels)) + 1e-6


@given(level=LEVELS, hours=st.floats(min_value=0.1, max_value=4))
def test_two_halves_of_a_noise_are_the_whole(level: float, hours: float) -> None:
    half = sound.daily_exposure(quantity(level + 60, "dBA"), quantity(hours, "h"))
    whole = sound.daily_exposure(quantity(level + 60, "dBA"), quantity(hours * 2, "h"))
    assert sound.sum_of_levels([half, half]).m_as("dBA") == pytest.approx(whole.m_as("dBA"))


@pytest.mark.parametrize("levels", [[], [math.nan], [math.inf], [200.0]])
def test_no_level_or_an_impossible_one_is_refused(levels: list[float]) -> None:
    with pytest.raises(OutOfRange):
        sound.sum_of_levels([quantity(level, "dBA") for level in levels])
