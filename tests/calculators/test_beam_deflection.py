"""A bent beam against the equation of motion solved step by step, and Biot and Savart's law."""

import math

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.beam_deflection import beam_circle, beam_deflection
from clampstand.calculators.worked import CannotWork

PRACTICAL = "electron-beam-deflection"


def test_height_agrees_with_the_equation_of_motion_solved_by_scipy(book):
    """Newton's law with the force e·V/d across, 2.5 kV on gun and plates, 60 mm along, gap 50 mm."""
    integrate = pytest.importorskip("scipy.integrate")
    constants = pytest.importorskip("scipy.constants")
    practical = book.practicals[PRACTICAL]
    (worked,) = beam_deflection(practical, book, given(practical, "beam-deflection"))
    across = constants.e * 2500 / 0.05 / constants.m_e
    along = math.sqrt(2 * constants.e * 2500 / constants.m_e)
    path = integrate.solve_ivp(
        lambda _, at: (at[1], across), (0, 0.06 / along), (0.0, 0.0), rtol=1e-10, atol=1e-15
    )
    assert worked.value.m_as("m") == pytest.approx(path.y[0][-1], rel=1e-6)


def test_height_is_a_quarter_of_the_square_over_the_gap_at_any_voltage(book):
    """With plates and anode joined the voltage cancels: y = x²/(4d), known since Thomson."""
    for voltage in ("500 V", "5 kV"):
        practical = with_numbers(book.practicals[PRACTICAL], u=voltage, x="40 mm", d="50 mm")
        names = {"accelerating": "u", "plates": "u", "along": "x", "gap": "d"}
        (worked,) = beam_deflection(practical, book, names)
        assert worked.value.m_as("mm") == pytest.approx(40**2 / (4 * 50))


def test_a_beam_that_would_have_met_the_plate_has_no_height(book):
    """y = d/2 at x = d·√2, which is 70.7 mm for 50 mm."""
    names = {"accelerating": "u", "plates": "u", "along": "x", "gap": "d"}
    just = with_numbers(book.practicals[PRACTICAL], u="2.5 kV", x="70.7 mm", d="50 mm")
    (worked,) = beam_deflection(just, book, names)
    assert worked.value.m_as("mm") == pytest.approx(25, rel=1e-3)
    too_far = with_numbers(book.practicals[PRACTICAL], u="2.5 kV", x="71 mm", d="50 mm")
    with pytest.raises(CannotWork, match="meets a plate"):
        beam_deflection(too_far, book, names)
    declared = book.practicals[PRACTICAL].numbers["beam ends"].value.value
    assert declared.m_as("mm") == pytest.approx(50 * math.sqrt(2), abs=0.5)


def test_the_declared_field_is_that_of_its_coils(book):
    """Biot and Savart's law summed over two rings of 320 turns, 68 mm, 0.3 A, with scipy's constants."""
    constants = pytest.importorskip("scipy.constants")
    pieces, radius, current = 3600, 0.068, 320 * 0.3
    arc = 2 * math.pi * radius / pieces
    reach = math.hypot(radius, radius / 2)
    of_one_ring = pieces * constants.mu_0 / (4 * math.pi) * current * arc / reach**2 * radius / reach
    field = book.practicals[PRACTICAL].numbers["coil field"].value.value
    assert field.m_as("T") == pytest.approx(2 * of_one_ring, rel=0.005)


def test_circle_agrees_with_the_charge_by_mass_of_codata(book):
    """e/m = 2V/(B·r)² gives CODATA's 1.758 820e11 C/kg back, but for relativity's half per cent."""
    constants = pytest.importorskip("scipy.constants")
    practical = book.practicals[PRACTICAL]
    (worked,) = beam_circle(practical, book, given(practical, "beam-circle"))
    seen = 2 * 2500 / (1.27e-3 * worked.value.m_as("m")) ** 2
    known = abs(constants.value("electron charge to mass quotient"))
    assert seen == pytest.approx(known, rel=0.005)
    assert seen < known
