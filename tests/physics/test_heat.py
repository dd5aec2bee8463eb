"""Heat against the definition, and the temperature that is not a rise."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from clampstand.physics import heat
from clampstand.units import NotAnAmount, OutOfRange, q, quantity, read_amount
from physics.reference import substances


@given(
    joules=st.floats(min_value=1, max_value=4e4),
    kilograms=st.floats(min_value=0.1, max_value=100),
    capacity=st.floats(min_value=100, max_value=5000),
)
def test_rise_energy_and_specific_heat_belong_together(
    joules: float, kilograms: float, capacity: float
) -> None:
    energy, mass, c = quantity(joules, "J"), quantity(kilograms, "kg"), quantity(capacity, "J/(kg*K)")
    rise = heat.temperature_rise(energy, mass, c)
    assert heat.energy_to_warm(mass, c, rise).m_as("J") == pytest.approx(joules)
    assert heat.specific_heat(energy, mass, rise).m_as("J/(kg*K)") == pytest.approx(capacity)


def test_warming_water_agrees_with_the_change_of_enthalpy() -> None:
    capacity = substances()["water"].quantity("specific-heat")
    ours = heat.energy_to_warm(q("1 kg"), capacity, q("10 K"))
    theirs = PropsSI("H", "T", 298.15, "P", 101325, "Water") - PropsSI("H", "T", 288.15, "P", 101325, "Water")
    assert ours.m_as("J") == pytest.approx(theirs, rel=1e-3)


def test_a_rise_is_written_in_kelvins_and_never_as_a_temperature() -> None:
    with pytest.raises(NotAnAmount, match="difference"):
        read_amount("33 °C", "temperature difference")
    rise = heat.temperature_rise(q("30 kJ"), q("1 kg"), q("900 J/(kg K)"))
    assert rise.m_as("K") == pytest.approx(33.33, abs=0.01)


def test_no_rise_has_no_specific_heat() -> None:
    with pytest.raises(OutOfRange, match="rise"):
        heat.specific_heat(q("30 kJ"), q("1 kg"), q("0 K"))


def test_subliming_a_kilogram_an_hour_takes_a_hundred_and_sixty_watts() -> None:
    latent = substances()["carbon-dioxide"].quantity("sublimation-enthalpy")
    energy = heat.energy_to_change_state(q("1 kg"), latent)
    assert (energy / q("1 h")).m_as("W") == pytest.approx(159.5, rel=2e-3)
    assert heat.energy_supplied(q("159.5 W"), q("1 h")).m_as("kJ") == pytest.approx(574, rel=2e-3)
