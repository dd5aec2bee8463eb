"""Snow from a cylinder against the energy balance and CoolProp; nothing is lost on the way."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from clampstand.physics import dry_ice
from clampstand.units import OutOfRange, Quantity, q, quantity
from physics.reference import substances


def figure(name: str) -> Quantity:
    return substances()["carbon-dioxide"].quantity(name)


def snow_at(celsius: float, table: str = "liquid-enthalpy") -> float:
    enthalpy = substances()["carbon-dioxide"].curve(table).at(quantity(celsius + 273.15, "K"))
    fraction = dry_ice.snow_fraction(
        enthalpy, figure("gas-enthalpy-at-sublimation"), figure("sublimation-enthalpy")
    )
    return float(fraction.m_as(""))


@pytest.mark.parametrize("celsius", [-45, -20, -3, 12, 22, 27])
def test_table_between_its_rows_agrees_with_coolprop(celsius: float) -> None:
    for table, quality, prop in (
        ("liquid-enthalpy", 0, "H"),
        ("vapour-enthalpy", 1, "H"),
        ("saturation-pressure", 0, "P"),
        ("liquid-density", 0, "D"),
    ):
        ours = substances()["carbon-dioxide"].curve(table).at(quantity(celsius + 273.15, "K"))
        theirs = PropsSI(prop, "T", celsius + 273.15, "Q", quality, "CO2")
        assert float(ours.magnitude) == pytest.approx(theirs, rel=5e-3)


def test_a_table_is_not_read_beyond_its_ends() -> None:
    with pytest.raises(OutOfRange):
        snow_at(31)


def test_without_a_dip_tube_there_is_hardly_any_snow() -> None:
    assert snow_at(20) == pytest.approx(0.290, abs=0.003)
    assert snow_at(20, "vapour-enthalpy") == pytest.approx(0.026, abs=0.002)


def test_a_colder_cylinder_gives_more_snow() -> None:
    assert snow_at(-20) > snow_at(0) > snow_at(20) > snow_at(25) > 0


def test_a_fluid_with_more_heat_than_the_gas_gives_none() -> None:
    assert dry_ice.snow_fraction(q("430 kJ/kg"), q("422 kJ/kg"), q("574 kJ/kg")).m_as("") == 0


@given(
    grams=st.floats(min_value=0, max_value=1e4),
    fraction=st.floats(min_value=0.01, max_value=1),
    caught=st.floats(min_value=0.1, max_value=1),
)
def test_snow_and_gas_together_are_the_liquid(grams: float, fraction: float, caught: float) -> None:
    snow, w, c = quantity(grams, "g"), quantity(fraction, ""), quantity(caught, "")
    together = snow + dry_ice.gas_vented(snow, w, c)
    liquid = dry_ice.liquid_for_snow(snow, w, c).m_as("kg")
    assert together.m_as("kg") == pytest.approx(liquid, rel=1e-12, abs=1e-12)


@given(
    kilograms=st.floats(min_value=0, max_value=50),
    loss=st.floats(min_value=0, max_value=10),
    hours=st.floats(min_value=0, max_value=100),
)
def test_what_is_ordered_is_what_is_left(kilograms: float, loss: float, hours: float) -> None:
    mass, rate, wait = quantity(kilograms, "kg"), quantity(loss, "kg/day"), quantity(hours, "h")
    ordered = dry_ice.mass_to_order(mass, rate, wait)
    left = dry_ice.mass_left_in_box(ordered, rate, wait)
    assert left.m_as("kg") == pytest.approx(kilograms, abs=1e-9)


def test_a_box_that_has_lost_all_holds_nothing() -> None:
    assert dry_ice.mass_left_in_box(q("1 kg"), q("5 kg/day"), q("10 h")).m_as("kg") == 0


def test_published_loss_of_a_box_is_about_a_hundred_grams_an_hour_and_two_hundred() -> None:
    assert figure("least-box-loss").m_as("kg/h") == pytest.approx(0.0945, rel=1e-3)
    assert figure("greatest-box-loss").m_as("kg/h") == pytest.approx(0.189, rel=1e-3)


def test_cylinder_contents_by_weight() -> None:
    assert dry_ice.cylinder_contents(q("16.4 kg"), q("10.05 kg")).m_as("kg") == pytest.approx(6.35)
    assert dry_ice.cylinder_contents(q("10 kg"), q("10.05 kg")).m_as("kg") == 0
