"""Light: the two-slit formula there and back, and laser limits against a maker's manual."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clampstand.physics import light
from clampstand.units import OutOfRange, q, quantity


@given(nanometres=st.floats(min_value=400, max_value=700), metres=st.floats(min_value=0.5, max_value=10))
def test_fringes_give_back_their_wavelength(nanometres: float, metres: float) -> None:
    wavelength, screen, slits = quantity(nanometres, "nm"), quantity(metres, "m"), q("0.25 mm")
    spacing = light.fringe_spacing(wavelength, screen, slits)
    assert light.wavelength_of_fringes(spacing, slits, screen).m_as("nm") == pytest.approx(nanometres)


def test_one_milliwatt_in_the_pupil_is_just_the_limit_of_a_blink() -> None:
    """A laser maker's manual gives 1 mW through 7 mm, 25 W/m², as the limit for 0.25 s."""
    assert light.irradiance(q("1 mW")).m_as("W/m**2") == pytest.approx(25, rel=0.05)
    assert light.visible_exposure_limit(q("0.25 s")).m_as("W/m**2") == pytest.approx(25, rel=0.02)


@pytest.mark.parametrize("time", ["1 µs", "11 s"])
def test_the_exposure_formula_is_refused_outside_its_times(time: str) -> None:
    with pytest.raises(OutOfRange):
        light.visible_exposure_limit(q(time))


def test_at_the_hazard_distance_the_beam_is_at_the_limit() -> None:
    limit = light.visible_exposure_limit(q("0.25 s"))
    distance = light.hazard_distance(q("5 mW"), q("1 mm"), q("1 mrad"), limit)
    spot = light.beam_diameter_at(q("1 mm"), q("1 mrad"), distance)
    assert light.irradiance(q("5 mW"), spot).m_as("W/m**2") == pytest.approx(limit.m_as("W/m**2"))


@given(milliwatts=st.floats(min_value=0, max_value=500))
def test_a_stronger_laser_never_reaches_less_far(milliwatts: float) -> None:
    def reach(power: float) -> float:
        return light.hazard_distance(quantity(power, "mW"), q("2 mm"), q("1.5 mrad"), q("25.5 W/m²")).m_as(
            "m"
        )

    assert 0 <= reach(milliwatts) <= reach(milliwatts * 2 + 1e-3) + 1e-12


def test_a_weak_laser_has_no_hazard_distance() -> None:
    assert light.hazard_distance(q("0.05 mW"), q("2 mm"), q("1 mrad"), q("25.5 W/m²")).m_as("m") == 0
    assert 4 * 0.05e-3 / (math.pi * 0.002**2) < 25.5
