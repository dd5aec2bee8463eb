"""Hydrogen of alkali metals and sulfur dioxide of a class, against worked examples and sums by hand."""

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.gas_from_reaction import hydrogen_of_piece, sulfur_dioxide_in_room
from clampstand.calculators.worked import CannotWork

METALS, ACID = "alkali-metals-with-water", "thiosulfate-and-acid"
ROOM_OVER_ICE = 293.15 / 273.15
"""Examples for 0 °C are carried to the 20 °C of the handbook."""


@pytest.mark.parametrize(
    ("grams", "litres_at_0"),
    [
        (6.9, 3.36),  # univerkov.com, 6.9 g of sodium
        (0.154, 0.0751),  # wyzant.com, 836263
    ],
)
def test_hydrogen_agrees_with_worked_examples(book, grams, litres_at_0):
    density = book.substances["sodium"].quantity("solid-density").m_as("g/cm**3")
    edge = (grams / density) ** (1 / 3)
    practical = with_numbers(book.practicals[METALS], a=f"{edge:.6f} cm")
    (worked,) = hydrogen_of_piece(practical, book, {"item": "sodium-cube", "edge": "a"})
    assert worked.value.m_as("L") == pytest.approx(litres_at_0 * ROOM_OVER_ICE, rel=0.003)


@pytest.mark.parametrize(("metal", "millilitres"), [("lithium", 25), ("sodium", 13.6), ("potassium", 7.1)])
def test_cubes_agree_with_a_sum_by_hand_at_24_litres_a_mole(book, metal, millilitres):
    """Densities 0.534, 0.968 and 0.862 g/mL, from memory: an independent set of figures."""
    practical = book.practicals[METALS]
    (worked,) = hydrogen_of_piece(practical, book, {"item": f"{metal}-cube", "edge": "cube"})
    assert worked.value.m_as("mL") == pytest.approx(millilitres, rel=0.045)


def test_what_is_no_alkali_metal_is_refused(book):
    practical = book.practicals[METALS]
    with pytest.raises(CannotWork, match="alkali"):
        hydrogen_of_piece(practical, book, {"item": "copper-electrode", "edge": "cube"})


def test_an_edge_that_is_no_length_is_refused(book):
    practical = with_numbers(book.practicals[METALS], a="3 g")
    with pytest.raises(CannotWork, match="edge"):
        hydrogen_of_piece(practical, book, {"item": "sodium-cube", "edge": "a"})


def test_the_class_agrees_with_a_sum_by_hand(book):
    """15 × 150 mL × 0.16 mol/L is 0.36 mol; 24.06 L a mole (20 °C) makes 8.66 L, in 240 m³ 36 ppm."""
    practical = book.practicals[ACID]
    large, small = sulfur_dioxide_in_room(practical, book, given(practical, "sulfur-dioxide-in-room"))
    assert large.value.m_as("ppm") == pytest.approx(0.36 * 24.06 / 240e3 * 1e6, rel=0.002)
    assert small.value.m_as("ppm") == pytest.approx(0.36 * 24.06 / 170e3 * 1e6, rel=0.002)


def test_the_acid_decides_where_it_runs_out_first(book):
    """Of 10 mL of acid each, 15 pairs have 0.3 mol, and two go to one molecule: 0.15 mol of gas."""
    practical = book.practicals[ACID]
    kit = tuple(
        line.model_copy(update={"amount": practical.numbers["first volume"].value})
        if line.item == "hydrochloric-acid-2"
        else line
        for line in practical.kit
    )
    less = practical.model_copy(update={"kit": kit})
    large, _ = sulfur_dioxide_in_room(less, book, given(practical, "sulfur-dioxide-in-room"))
    assert large.value.m_as("ppm") == pytest.approx(0.15 * 24.06 / 240e3 * 1e6, rel=0.002)


def test_what_the_kit_list_does_not_measure_out_is_refused(book):
    practical = book.practicals[ACID]
    with pytest.raises(CannotWork, match="thiosulfate"):
        sulfur_dioxide_in_room(practical, book, {"acid": "hydrochloric-acid-2", "thiosulfate": "graph-paper"})


def test_a_share_that_escapes_leaves_that_share(book):
    """A hundredth of 0.36 mol is 3.6 mmol or 0.0866 L: 0.36 ppm of 240 m³, 0.51 ppm of 170 m³."""
    practical = with_numbers(book.practicals[ACID], part="1 %")
    asked = given(practical, "sulfur-dioxide-in-room") | {"escapes": "part"}
    large, small = sulfur_dioxide_in_room(practical, book, asked)
    assert large.value.m_as("ppm") == pytest.approx(0.0036 * 24.06 / 240e3 * 1e6, rel=0.002)
    assert small.value.m_as("ppm") == pytest.approx(0.0036 * 24.06 / 170e3 * 1e6, rel=0.002)
    assert ("share that escapes", "an assumption") in [(one.name, one.origin) for one in large.inputs]


@pytest.mark.parametrize("part", ["120 %", "3 g"])
def test_a_share_that_is_no_part_is_refused(book, part):
    practical = with_numbers(book.practicals[ACID], part=part)
    with pytest.raises(CannotWork, match="part of a whole"):
        sulfur_dioxide_in_room(
            practical, book, given(practical, "sulfur-dioxide-in-room") | {"escapes": "part"}
        )
