"""Carbon dioxide under pressure against CoolProp and chemicals, and the vessel nobody may shut."""

import math

import pytest
from chemicals import Tb, Tt
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from clampstand.physics import carbon_dioxide as co2
from clampstand.units import OutOfRange, q, quantity
from physics.reference import substances

CAS = "124-38-9"


@pytest.mark.parametrize("kelvins", [217, 230, 250, 273.15, 293.15, 300, 304])
def test_saturation_pressure_agrees_with_coolprop(kelvins: float) -> None:
    ours = co2.saturation_pressure(quantity(kelvins, "K"))
    assert ours.m_as("Pa") == pytest.approx(PropsSI("P", "T", kelvins, "Q", 0, "CO2"), rel=5e-4)


def test_above_the_critical_point_there_is_no_saturation_pressure() -> None:
    with pytest.raises(OutOfRange):
        co2.saturation_pressure(q("32 °C"))


def test_sublimation_and_saturation_meet_at_the_triple_point() -> None:
    assert co2.sublimation_pressure(co2.TRIPLE_TEMPERATURE).m_as("kPa") == pytest.approx(517.95)
    assert co2.saturation_pressure(co2.TRIPLE_TEMPERATURE).m_as("kPa") == pytest.approx(517.95, rel=1e-4)
    assert co2.TRIPLE_TEMPERATURE.m_as("K") == pytest.approx(Tt(CAS), abs=0.1)


def test_sublimation_temperature_agrees_with_chemicals_and_comes_back() -> None:
    temperature = co2.sublimation_temperature()
    assert temperature.m_as("K") == pytest.approx(Tb(CAS), abs=0.05)
    fixed_point = 194.6857  # K, secondary reference point of the ITS-90, Bedford and others 1996, from memory
    assert temperature.m_as("K") == pytest.approx(fixed_point, abs=2e-3)
    assert co2.sublimation_pressure(temperature).m_as("Pa") == pytest.approx(101325, rel=1e-6)


@pytest.mark.parametrize("pressure", ["600 kPa", "0.1 Pa"])
def test_no_sublimation_outside_the_equation(pressure: str) -> None:
    with pytest.raises(OutOfRange):
        co2.sublimation_temperature(q(pressure))


def test_reference_enthalpy_of_sublimation_follows_from_clapeyron() -> None:
    """Slope of the sublimation pressure, times temperature, times the change of volume."""
    at, step = 194.685, 1e-3
    slope = (
        co2.sublimation_pressure(quantity(at + step, "K"))
        - co2.sublimation_pressure(quantity(at - step, "K"))
    ).m_as("Pa") / (2 * step)
    gas_density = 2.8147  # kg/m³, CoolProp 8.0.0 with the gas imposed at 101.325 kPa
    clapeyron = slope * at * (1 / gas_density - 1 / 1562)
    tabled = substances()["carbon-dioxide"].quantity("sublimation-enthalpy").m_as("J/kg")
    assert tabled == pytest.approx(clapeyron, rel=2e-3)
    assert tabled == pytest.approx(25.23e3 / 0.044009, rel=5e-3)  # Giauque and Egan 1937, from memory


def test_in_a_sealed_bottle_liquid_forms_long_before_the_ideal_pressure() -> None:
    mass, bottle, warm = q("100 g"), q("500 mL"), q("20 °C")
    assert co2.ideal_pressure(mass, bottle, warm).m_as("bar") == pytest.approx(110.8, rel=1e-3)
    sealed = co2.pressure_in_sealed_vessel(mass, bottle, warm)
    assert sealed.m_as("bar") == pytest.approx(57.29 + 1.013, rel=1e-3)


def test_a_vessel_liquid_may_fill_has_no_bound_and_is_refused() -> None:
    with pytest.raises(OutOfRange, match="nothing bounds"):
        co2.pressure_in_sealed_vessel(q("400 g"), q("500 mL"), q("20 °C"))


@given(grams=st.floats(min_value=0.01, max_value=200), kelvins=st.floats(min_value=217, max_value=304))
def test_more_dry_ice_never_means_less_pressure(grams: float, kelvins: float) -> None:
    def sealed(mass: float) -> float:
        return co2.pressure_in_sealed_vessel(quantity(mass, "g"), q("1 L"), quantity(kelvins, "K")).m_as("Pa")

    assert sealed(grams * 2) >= sealed(grams) >= 101325
    assert math.isfinite(sealed(grams))
