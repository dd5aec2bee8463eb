"""Pressure in a cylinder of liquid carbon dioxide, against CoolProp (Span and Wagner's equation of state)."""

import pytest

from clampstand.calculators.saturation import saturation_pressure
from clampstand.calculators.worked import CannotWork
from tiny import practical


def over_carbon_dioxide(book, temperature: str):
    made = practical(numbers={"liquid": {"value": temperature}})
    return saturation_pressure(made, book, {"substance": "carbon-dioxide", "temperature": "liquid"})[0]


@pytest.mark.parametrize("celsius", [-20, 0, 12, 20, 28])
def test_it_agrees_with_coolprop(book, celsius):
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    expected = coolprop.PropsSI("P", "T", celsius + 273.15, "Q", 0, "CO2")
    assert over_carbon_dioxide(book, f"{celsius} °C").value.m_as("Pa") == pytest.approx(expected, rel=0.005)


def test_above_the_critical_temperature_there_is_none(book):
    with pytest.raises(CannotWork, match="does not reach 35 °C"):
        over_carbon_dioxide(book, "35 °C")
