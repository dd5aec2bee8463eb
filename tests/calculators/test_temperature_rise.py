"""Heating against a textbook's worked example, the law of Dulong and Petit, and a handbook's figure."""

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.temperature_rise import specific_heat_seen, temperature_rise
from clampstand.calculators.worked import CannotWork

PRACTICAL = "specific-heat-capacity"
NAMES = {"item": "aluminium-block", "power": "p", "time": "t", "mass": "m"}


def test_a_textbook_pan_of_aluminium_warms_by_sixty_degrees(book):
    """27.0 kJ warm 0.500 kg by 60 K at 900 J/(kg K) (OpenStax, College Physics, 14.2; from memory)."""
    practical = with_numbers(book.practicals[PRACTICAL], p="45 W", t="10 min", m="0.5 kg")
    energy, rise = temperature_rise(practical, book, NAMES)
    assert energy.value.m_as("kJ") == pytest.approx(27.0)
    assert rise.value.m_as("K") == pytest.approx(60, rel=0.01)


def test_the_demo_block_agrees_with_dulong_and_petit(book):
    """24.94 J/(mol K) over 26.98 g/mol; at room temperature aluminium is 3 % below the law."""
    constants = pytest.importorskip("scipy.constants")
    practical = book.practicals[PRACTICAL]
    _, rise = temperature_rise(practical, book, given(practical, "temperature-rise"))
    by_law = 30e3 / (3 * constants.R / 0.026982)
    assert rise.value.m_as("K") == pytest.approx(by_law, rel=0.04)
    assert rise.value.m_as("K") > by_law


def test_the_seen_specific_heats_are_those_of_the_data_sheet(book):
    """By hand: 30 kJ over 31 K and over 25 K, for a kilogram, is 968 and 1200 J/(kg K)."""
    practical = book.practicals[PRACTICAL]
    low, high = specific_heat_seen(practical, book, given(practical, "specific-heat-seen"))
    assert low.value.m_as("J/(kg*K)") == pytest.approx(968, abs=0.5)
    assert high.value.m_as("J/(kg*K)") == pytest.approx(1200)
    numbers = practical.numbers
    assert numbers["lowest usual result"].value.value.m_as("J/(kg*K)") == pytest.approx(968, rel=0.01)
    assert numbers["highest usual result"].value.value.m_as("J/(kg*K)") == pytest.approx(1200, rel=0.01)


def test_an_item_of_no_known_substance_is_refused_in_words(book):
    practical = with_numbers(book.practicals[PRACTICAL], p="50 W", t="10 min", m="1 kg")
    with pytest.raises(CannotWork, match="made of"):
        temperature_rise(practical, book, NAMES | {"item": "ammeter"})
