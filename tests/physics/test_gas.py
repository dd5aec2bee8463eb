"""Gases against CoolProp, chemicals and scipy, and the slips between volume, mass and temperature."""

import pytest
from chemicals import ppmv_to_mgm3
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from clampstand.physics import carbon_dioxide, chemistry, gas
from clampstand.units import q, quantity
from physics.reference import substances


def test_gas_constant_and_atmosphere_are_those_of_the_si() -> None:
    for module in (gas, carbon_dioxide, chemistry):
        assert module.GAS_CONSTANT.m_as("J/(mol*K)") == pytest.approx(constants.R, rel=1e-14)
        assert module.ATMOSPHERE.m_as("Pa") == constants.atm
    assert chemistry.FARADAY.m_as("C/mol") == pytest.approx(constants.value("Faraday constant"), rel=1e-12)


@pytest.mark.parametrize("celsius", [-20, 0, 20, 40])
@pytest.mark.parametrize("kilopascals", [95, 101.325, 200])
def test_density_of_carbon_dioxide_agrees_with_coolprop(celsius: float, kilopascals: float) -> None:
    ours = gas.carbon_dioxide_density(quantity(celsius + 273.15, "K"), quantity(kilopascals, "kPa"))
    theirs = PropsSI("D", "T", celsius + 273.15, "P", kilopascals * 1e3, "CO2")
    assert ours.m_as("kg/m**3") == pytest.approx(theirs, rel=2e-4)


@pytest.mark.parametrize("celsius", [-20, 20, 60])
def test_second_virial_coefficient_agrees_with_coolprop(celsius: float) -> None:
    ours = gas.second_virial_coefficient(quantity(celsius + 273.15, "K"))
    theirs = PropsSI("BVIRIAL", "T", celsius + 273.15, "P", 101325, "CO2")
    assert ours.m_as("m**3/mol") == pytest.approx(theirs, rel=0.03)


def test_the_ideal_gas_is_half_a_per_cent_too_thin() -> None:
    ideal = gas.gas_density(gas.CO2_MOLAR_MASS, q("20 °C"))
    assert (gas.carbon_dioxide_density(q("20 °C")) / ideal).m_as("") == pytest.approx(1.0053, abs=2e-4)


@pytest.mark.parametrize("celsius", [0, 20, 25])
def test_mass_concentration_agrees_with_chemicals(celsius: float) -> None:
    ours = gas.mass_concentration(q("15000 ppm"), gas.CO2_MOLAR_MASS, quantity(celsius + 273.15, "K"))
    assert ours.m_as("mg/m**3") == pytest.approx(ppmv_to_mgm3(15000, 44.0095, T=celsius + 273.15), rel=1e-4)


def test_american_and_british_figures_of_one_limit_differ_by_their_temperature() -> None:
    def printed(celsius: str) -> float:
        return gas.mass_concentration(q("5000 ppm"), gas.CO2_MOLAR_MASS, q(celsius)).m_as("mg/m**3")

    assert printed("25 °C") == pytest.approx(9000, rel=2e-3)
    assert printed("20 °C") == pytest.approx(9150, rel=2e-3)


def test_the_british_fifteen_minute_limit_is_27_400_and_not_274_000() -> None:
    ours = gas.mass_concentration(q("15000 ppm"), gas.CO2_MOLAR_MASS, q("20 °C"))
    assert ours.m_as("mg/m**3") == pytest.approx(27_400, rel=2e-3)


def test_ppm_by_volume_is_not_ppm_by_mass() -> None:
    air = substances()["air"].quantity("molar-mass")
    assert gas.mass_ratio(q("5000 ppm"), gas.CO2_MOLAR_MASS, air).m_as("ppm") == pytest.approx(7597, abs=1)


@given(fraction=st.floats(min_value=1e-9, max_value=1), kelvins=st.floats(min_value=200, max_value=400))
def test_there_and_back_between_volume_and_mass(fraction: float, kelvins: float) -> None:
    there = gas.mass_concentration(quantity(fraction, ""), gas.CO2_MOLAR_MASS, quantity(kelvins, "K"))
    back = gas.volume_fraction(there, gas.CO2_MOLAR_MASS, quantity(kelvins, "K"))
    assert back.m_as("") == pytest.approx(fraction)


def test_a_flammable_limit_in_per_cent_and_as_a_fraction_is_one_limit() -> None:
    vapour = q("4.12 L")
    by_per_cent = gas.air_made_flammable(vapour, q("3.1 %"))
    assert by_per_cent.m_as("L") == pytest.approx(
        gas.air_made_flammable(vapour, quantity(0.031, "")).m_as("L")
    )
    assert by_per_cent.m_as("L") == pytest.approx(132.9, rel=1e-3)


@pytest.mark.parametrize("solvent", ["ethanol"])
def test_over_an_open_bottle_at_room_temperature_the_vapour_can_catch_fire(solvent: str) -> None:
    of = substances()[solvent]
    assert gas.saturated_fraction(of.quantity("vapour-pressure")) > of.quantity("lower-flammable-limit")
    assert of.quantity("flash-point") < q("20 °C")
