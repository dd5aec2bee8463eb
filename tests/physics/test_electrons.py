"""Electrons in a tube against CODATA, Biot and Savart's law, and the classical slip."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from clampstand.physics import electrons as e
from clampstand.units import OutOfRange, bare, q, quantity


@pytest.mark.parametrize(
    ("ours", "unit", "codata"),
    [
        (e.ELEMENTARY_CHARGE, "C", constants.e),
        (e.ELECTRON_MASS, "kg", constants.m_e),
        (e.LIGHT_SPEED, "m/s", constants.c),
        (e.PLANCK, "J*s", constants.h),
        (e.VACUUM_PERMEABILITY, "T*m/A", constants.mu_0),
    ],
)
def test_constants_are_those_of_codata(ours, unit: str, codata: float) -> None:
    assert ours.m_as(unit) == pytest.approx(codata, rel=1e-8)


def test_at_thirty_kilovolts_newton_is_four_per_cent_too_fast_and_is_refused() -> None:
    assert e.electron_speed(q("30 kV")).m_as("m/s") == pytest.approx(0.9844e8, rel=1e-4)
    with pytest.raises(OutOfRange):
        e.electron_speed_classical(q("30 kV"))


def test_at_five_kilovolts_newton_is_073_per_cent_too_fast() -> None:
    ratio = e.electron_speed_classical(q("5 kV")) / e.electron_speed(q("5 kV"))
    assert ratio.m_as("") == pytest.approx(1.0073, abs=1e-4)


@given(volts=st.floats(min_value=1, max_value=1e7))
def test_nothing_outruns_light(volts: float) -> None:
    assert e.electron_speed(quantity(volts, "V")) < e.LIGHT_SPEED


def test_helmholtz_field_is_that_of_two_rings() -> None:
    turns, current, radius = 320, 1.0, 0.068
    ring = constants.mu_0 * turns * current * radius**2 / (2 * (radius**2 + (radius / 2) ** 2) ** 1.5)
    field = e.helmholtz_field(bare(turns), quantity(current, "A"), quantity(radius, "m"))
    assert field.m_as("T") == pytest.approx(2 * ring, rel=1e-8)


def test_a_slow_beam_s_circle_gives_back_the_specific_charge() -> None:
    radius = e.radius_in_field(q("250 V"), q("1 mT"))
    ratio = e.specific_charge(q("250 V"), q("1 mT"), radius)
    assert ratio.m_as("C/kg") == pytest.approx(constants.e / constants.m_e, rel=1e-3)


def test_deflection_agrees_with_flying_the_beam_step_by_step() -> None:
    speed = e.electron_speed_classical(q("2 kV")).m_as("m/s")
    field = 100 / 0.01
    inside = 0.04 / speed
    across = constants.e * field / constants.m_e * inside
    expected = across * inside / 2 + across * 0.2 / speed
    y = e.deflection_on_screen(q("100 V"), q("2 kV"), q("40 mm"), q("10 mm"), q("0.2 m"))
    assert y.m_as("m") == pytest.approx(expected, rel=1e-6)
