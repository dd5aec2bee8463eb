"""A wire against the wire tables of the CRC Handbook, and its resistivity against the handbook's."""

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.wire_resistance import wire_resistance

PRACTICAL = "resistance-of-a-wire"
NAMES = {"resistivity": "rho", "length": "l", "diameter": "d"}

# CRC Handbook of Chemistry and Physics, wire tables at 20 °C: diameter in mm, ohms per metre.
CONSTANTAN = [("8.252 mm", 0.00848), ("6.543 mm", 0.0135)]
NICHROME = [("8.252 mm", 0.0201)]


@pytest.mark.parametrize(
    ("resistivity", "diameter", "ohms"),
    [("45.38e-8 Ω m", *row) for row in CONSTANTAN] + [("107.5e-8 Ω m", *row) for row in NICHROME],
)
def test_a_metre_of_wire_agrees_with_the_handbook(book, resistivity, diameter, ohms):
    practical = with_numbers(book.practicals[PRACTICAL], rho=resistivity, l="1 m", d=diameter)
    (worked,) = wire_resistance(practical, book, NAMES)
    assert worked.value.m_as("ohm") == pytest.approx(ohms, rel=0.004)


def test_a_published_exercise_on_constantan(book):
    """10 Ω of 0.6 mm wire with 0.5 µΩ m is 5.7 m long (physicstasks.eu 2119)."""
    practical = with_numbers(book.practicals[PRACTICAL], rho="0.5e-6 Ω m", l="5.7 m", d="0.6 mm")
    (worked,) = wire_resistance(practical, book, NAMES)
    assert worked.value.m_as("ohm") == pytest.approx(10, rel=0.01)


def test_the_reel_is_constantan(book):
    """The label's resistivity lies within 10 % of the handbook's for constantan."""
    handbook = book.substances[book.kit["constantan-wire"].substance].quantity("resistivity")
    practical = book.practicals[PRACTICAL]
    label = practical.numbers[given(practical, "wire-resistance")["resistivity"]].value.value
    assert label.m_as("ohm*m") == pytest.approx(handbook.m_as("ohm*m"), rel=0.1)
