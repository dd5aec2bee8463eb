"""A charged dome against an engineer's published sums and Coulomb's law."""

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.sphere_charge import sphere_charge

PRACTICAL = "van-de-graaff-generator"


def test_a_large_dome_agrees_with_the_published_sums(book):
    """Jim Lux, Practical electrostatic calculations: 178 mm, 19.8 pF, 400 kV, 1.5 J; 17.5 cm, 525 kV."""
    practical = with_numbers(book.practicals[PRACTICAL], r="178 mm", v="400 kV")
    capacitance, charge, energy, _ = sphere_charge(practical, book, {"radius": "r", "voltage": "v"})
    assert capacitance.value.m_as("pF") == pytest.approx(19.8, abs=0.05)
    assert energy.value.m_as("J") == pytest.approx(0.5 * 19.8e-12 * 400e3**2, rel=0.01)
    assert charge.value.m_as("uC") == pytest.approx(19.8e-12 * 400e3 * 1e6, rel=0.01)
    practical = with_numbers(book.practicals[PRACTICAL], r="17.5 cm", v="400 kV")
    *_, greatest = sphere_charge(practical, book, {"radius": "r", "voltage": "v"})
    assert greatest.value.m_as("kV") == pytest.approx(525)


def test_the_demo_dome_agrees_with_coulombs_law(book):
    """Q = V·r/k with Coulomb's constant k = 8.987 552e9 N m²/C², and E = Q·V/2, at 100 mm and 200 kV."""
    practical = book.practicals[PRACTICAL]
    _, charge, energy, greatest = sphere_charge(practical, book, given(practical, "sphere-charge"))
    by_hand = 200e3 * 0.1 / 8.987552e9
    assert charge.value.m_as("C") == pytest.approx(by_hand, rel=1e-5)
    assert energy.value.m_as("J") == pytest.approx(by_hand * 200e3 / 2, rel=1e-5)
    assert charge.shown == "2.3\u00a0µC"
    assert energy.shown == "230\u00a0mJ"
    assert greatest.value.m_as("kV") == pytest.approx(300)


def test_the_kit_counts_no_less_than_the_sphere(book):
    """Earthed things nearby only add capacitance, so what the kit says must not be less."""
    in_kit = book.kit["van-de-graaff"].output.capacitance.value
    assert in_kit.m_as("pF") >= 0.1 / 8.987552e9 * 1e12


def test_the_energy_limit_is_met_where_the_data_sheets_say(book):
    """350 mJ (EN 50191): at 251 kV for a radius of 0.10 m, 224 kV for 0.125 m, 205 kV for 0.15 m."""
    for radius, voltage in (("0.10 m", "251 kV"), ("0.125 m", "224 kV"), ("0.15 m", "205 kV")):
        practical = with_numbers(book.practicals[PRACTICAL], r=radius, v=voltage)
        _, _, energy, _ = sphere_charge(practical, book, {"radius": "r", "voltage": "v"})
        assert energy.value.m_as("mJ") == pytest.approx(350, rel=0.01)
