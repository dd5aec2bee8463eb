"""Copper moved by a current, against worked examples and the ampere-hour tables of platers."""

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.electrolysis_mass import electrolysis_mass
from clampstand.calculators.worked import CannotWork

PRACTICAL = "electrolysis-of-copper-sulfate"
NAMES = {"item": "copper-electrode", "current": "I", "time": "t"}


@pytest.mark.parametrize(
    ("current", "time", "grams"),
    [
        ("5 A", "1 h", 5.928),  # theprimecalculator.com, Faraday's law, example
        ("16 A", "600 s", 3.16),  # nanolounge.de, 14112
        ("2 A", "5000 s", 3.29),  # chemsolved.com, 10 000 C
        ("1 A", "1 h", 1.186),  # electrochemical equivalent of Cu²⁺ in platers' tables, from memory
    ],
)
def test_masses_agree_with_worked_examples(book, current, time, grams):
    practical = with_numbers(book.practicals[PRACTICAL], I=current, t=time)
    (worked,) = electrolysis_mass(practical, book, NAMES)
    assert worked.value.m_as("g") == pytest.approx(grams, rel=0.002)


def test_the_number_declared_is_the_one_worked_out(book):
    practical = book.practicals[PRACTICAL]
    (worked,) = electrolysis_mass(practical, book, given(practical, "electrolysis-mass"))
    declared = practical.numbers["copper moved"].value.value
    assert worked.value.m_as("g") == pytest.approx(declared.m_as("g"), abs=0.0005)


def test_what_makes_no_known_ion_is_refused(book):
    practical = with_numbers(book.practicals[PRACTICAL], I="1 A", t="1 h")
    with pytest.raises(CannotWork, match="electrons"):
        electrolysis_mass(practical, book, {**NAMES, "item": "ethanol"})


def test_a_voltage_is_no_current(book):
    practical = with_numbers(book.practicals[PRACTICAL], I="1 V", t="1 h")
    with pytest.raises(CannotWork):
        electrolysis_mass(practical, book, NAMES)
