"""Speed of electrons: the momentum of special relativity with CODATA constants, and a textbook's table."""

import math

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.electron_speed import electron_speed
from clampstand.calculators.worked import CannotWork

PRACTICAL = "electron-beam-deflection"


def test_speed_agrees_with_the_momentum_worked_out_from_scipy_constants(book):
    """v = pc²/E with pc = √(T² + 2T·mc²), T = 2.5 keV; scipy.constants carries CODATA."""
    constants = pytest.importorskip("scipy.constants")
    practical = book.practicals[PRACTICAL]
    by_newton, true = electron_speed(practical, book, given(practical, "electron-speed"))
    rest = constants.value("electron mass energy equivalent in MeV") * 1e6
    energy = 2500.0
    momentum = math.sqrt(energy**2 + 2 * energy * rest)
    assert true.value.m_as("m/s") == pytest.approx(momentum / (energy + rest) * constants.c, rel=1e-6)
    classical = math.sqrt(2 * constants.e * 2500 / constants.m_e)
    assert by_newton.value.m_as("m/s") == pytest.approx(classical, rel=1e-6)


def test_speed_at_five_kilovolts_is_that_of_the_data_sheet(book):
    """By hand: 4.19e7 m/s by Newton and 4.16e7 m/s by relativity; they differ by 3T/4mc², 0.73 %."""
    practical = with_numbers(book.practicals[PRACTICAL], voltage="5 kV")
    by_newton, true = electron_speed(practical, book, {"voltage": "voltage"})
    assert by_newton.value.m_as("m/s") == pytest.approx(4.19e7, rel=2e-3)
    assert true.value.m_as("m/s") == pytest.approx(4.16e7, rel=2e-3)
    assert (by_newton.value / true.value).m_as("") - 1 == pytest.approx(0.75 * 5 / 511, rel=0.02)
    assert "0.73 %" in by_newton.note


def test_what_is_no_voltage_is_refused_in_words(book):
    practical = with_numbers(book.practicals[PRACTICAL], voltage="5 m")
    with pytest.raises(CannotWork):
        electron_speed(practical, book, {"voltage": "voltage"})
