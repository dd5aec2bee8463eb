"""The fall of an electroscope against a sum by hand."""

import pytest

from clampstand.calculators.electroscope import electroscope_fall


def test_fall_agrees_with_a_sum_by_hand(book):
    """10 pF × 2 kV over 36.13 kBq × ½ × 5.486 MeV / 35.1 eV × e; e exact in the SI, W from ICRU Report 31."""
    practical = book.practicals["electroscope-and-ionisation"]
    given = {"source": "source", "capacitance": "capacitance", "voltage": "leaf voltage"}
    charge, time = electroscope_fall(practical, book, given)
    current = 36.13e3 * 0.5 * 5.486e6 / 35.1 * 1.602176634e-19
    assert charge.value.m_as("C") == pytest.approx(20e-9)
    assert time.value.m_as("s") == pytest.approx(20e-9 / current, rel=0.01)
