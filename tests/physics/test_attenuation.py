"""Narrow beams: against published thicknesses, by Beer's law, and past the mix-up of three thicknesses."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from clampstand.physics import attenuation
from clampstand.units import OutOfRange, q, quantity
from physics.reference import curve, materials

coefficients = st.floats(0.01, 100)
thicknesses = st.floats(0, 0.5)
LEAD = materials()["lead"].quantity("density")
AT_662 = curve("lead.attenuation").at(quantity(661.657, "keV"))


def test_three_thicknesses_of_lead_for_caesium_are_not_one() -> None:
    """Half-value 5.54 mm; tenth-value 18.4 mm; mean free path 8.00 mm."""
    assert attenuation.half_value_thickness(AT_662, LEAD).m_as("mm") == pytest.approx(5.54, rel=0.015)
    assert attenuation.tenth_value_thickness(AT_662, LEAD).m_as("mm") == pytest.approx(18.4, rel=0.015)
    assert attenuation.mean_free_path(AT_662, LEAD).m_as("mm") == pytest.approx(8.00, rel=0.015)


def test_coefficients_are_read_between_the_rows() -> None:
    """A wrong interpolation gives 0.0669 cm²/g for lead at 661.657 keV, and 9.1 mm for the half-value."""
    assert AT_662.m_as("cm**2/g") == pytest.approx(0.1102, rel=0.01)
    at_59 = curve("lead.attenuation").at(quantity(59.5, "keV"))
    assert at_59.m_as("cm**2/g") == pytest.approx(5.12, rel=0.01)


@pytest.mark.parametrize(("kiloelectronvolts", "published"), [(20, 0.5389), (30, 0.1537), (60, 0.03041)])
def test_energy_absorption_of_air_at_low_energies(kiloelectronvolts: float, published: float) -> None:
    air = curve("dry-air.energy-absorption").at(quantity(kiloelectronvolts, "keV"))
    assert air.m_as("cm**2/g") == pytest.approx(published, rel=0.002)


def test_lead_is_clearer_just_below_its_edge() -> None:
    lead = curve("lead.attenuation")
    assert lead.at(quantity(87.9, "keV")).m_as("cm**2/g") == pytest.approx(1.91, rel=0.01)
    assert lead.at(quantity(88.1, "keV")).m_as("cm**2/g") == pytest.approx(7.67, rel=0.01)


@given(coefficients, thicknesses, thicknesses)
def test_two_sheets_pass_what_one_of_both_thicknesses_passes(mu: float, first: float, second: float) -> None:
    c, d = quantity(mu, "cm**2/g"), q("0.01 g/mL")
    passed = [
        attenuation.transmission(c, d, quantity(x, "m")).magnitude for x in (first, second, first + second)
    ]
    assert passed[0] * passed[1] == pytest.approx(passed[2], rel=1e-9)


@given(coefficients)
def test_half_and_tenth_values_pass_what_they_say(mu: float) -> None:
    c, d = quantity(mu, "cm**2/g"), q("2 g/mL")
    half, tenth = attenuation.half_value_thickness(c, d), attenuation.tenth_value_thickness(c, d)
    assert attenuation.transmission(c, d, half).magnitude == pytest.approx(0.5, rel=1e-12)
    assert attenuation.transmission(c, d, tenth).magnitude == pytest.approx(0.1, rel=1e-12)
    assert (tenth / half).m_as("") == pytest.approx(attenuation.half_values_for(quantity(0.1, "")).magnitude)


def test_thickness_for_two_energies_agrees_with_scipy() -> None:
    weights, mus = [1.173, 1.332], [0.0617, 0.0562]
    ours = attenuation.thickness_for_mixture(
        [quantity(w, "") for w in weights], [quantity(m, "cm**2/g") for m in mus], LEAD, quantity(0.1, "")
    )

    def excess(centimetres: float) -> float:
        pairs = zip(weights, mus, strict=True)
        return sum(w * math.exp(-m * 11.35 * centimetres) for w, m in pairs) - 0.1 * sum(weights)

    assert ours.m_as("cm") == pytest.approx(brentq(excess, 0, 20), rel=1e-9)


@pytest.mark.parametrize(
    ("weights", "share"), [([], 0.5), ([1.0], 0.5), ([1.0, 0.0], 0.5), ([1.0, 1.0], 0.0)]
)
def test_a_mixture_that_makes_no_sense_is_refused(weights: list[float], share: float) -> None:
    mus = [quantity(0.06, "cm**2/g"), quantity(0.05, "cm**2/g")] if weights else []
    with pytest.raises(OutOfRange):
        attenuation.thickness_for_mixture([quantity(w, "") for w in weights], mus, LEAD, quantity(share, ""))
