"""Solutions made up and diluted, against worked examples of teachers and of a chemistry department."""

from dataclasses import replace

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.dilution import dilution
from clampstand.calculators.make_up import make_up
from clampstand.calculators.worked import CannotWork
from clampstand.units import read_amount

COPPER = "electrolysis-of-copper-sulfate"
THIOSULFATE = "thiosulfate-and-acid"


def one_portion(book, practical_id, item, amount):
    """The practical with one line of kit for the class: so much of one solution."""
    practical = book.practicals[practical_id]
    line = next(line for line in practical.kit if line.item == item)
    update = {"per": "class", "count": 1, "spare": 0, "amount": read_amount(amount), "allowance": None}
    return practical.model_copy(update={"kit": (line.model_copy(update=update),)})


def as_strong_as(book, item, concentration):
    """The book with one solution of another strength."""
    changed = book.kit[item].model_copy(update={"concentration": read_amount(concentration)})
    return replace(book, kit={**book.kit, item: changed})


@pytest.mark.parametrize(
    ("practical", "item", "strength", "volume", "grams"),
    [
        # 50 mL of 0.500 M takes 6.24 g of the pentahydrate (mywordsolution.com, question 9482316)
        (COPPER, "copper-sulfate-solution", "0.5 mol/dm³", "50 mL", 6.2385),
        # 500 mL of 0.025 M takes 3.1 g of the pentahydrate (socratic.org, 54ce7270581e2a1778ac1600)
        (THIOSULFATE, "thiosulfate-solution", "0.025 mol/dm³", "500 mL", 3.1),
        # 1.24 g in 100 cm³ is 0.0500 M (socratic.org, 58e54ff97c0149694e54e5e4)
        (THIOSULFATE, "thiosulfate-solution", "0.05 mol/dm³", "100 mL", 1.24),
        # 24.82 g in a cubic decimetre is 0.1 M (jiskha.com, 1359467791)
        (THIOSULFATE, "thiosulfate-solution", "0.1 mol/dm³", "1 L", 24.82),
    ],
)
def test_masses_agree_with_worked_examples(book, practical, item, strength, volume, grams):
    lesson = with_numbers(one_portion(book, practical, item, volume), vessel=volume)
    _, mass = make_up(lesson, as_strong_as(book, item, strength), {"item": item, "vessel": "vessel"})
    assert mass.value.m_as("g") == pytest.approx(grams, rel=0.003 if grams != 3.1 else 0.01)


@pytest.mark.parametrize(
    ("stock", "strength", "volume", "millilitres"),
    [
        # 55 mL of 1.85 M from 12.0 M takes 8.48 mL (studylib.net, 14366144)
        ("12.0 mol/dm³", "1.85 mol/dm³", "55 mL", 8.48),
        # 10 mL of 12 M makes 1000 mL of 0.12 M (theprimecalculator.com, acid dilution)
        ("12 mol/dm³", "0.12 mol/dm³", "1000 mL", 10),
        # 50 mL of 8 M makes 200 mL of 2 M (chemistrybytes.com, dilution)
        ("8 mol/dm³", "2 mol/dm³", "200 mL", 50),
    ],
)
def test_dilutions_agree_with_worked_examples(book, stock, strength, volume, millilitres):
    item, of = "hydrochloric-acid-2", "hydrochloric-acid-5"
    lesson = with_numbers(one_portion(book, THIOSULFATE, item, volume), vessel=volume)
    other = as_strong_as(as_strong_as(book, item, strength), of, stock)
    _, acid, water = dilution(lesson, other, {"item": item, "stock": of, "vessel": "vessel"})
    assert acid.value.m_as("mL") == pytest.approx(millilitres, rel=0.001)
    assert (acid.value + water.value).m_as("mL") == pytest.approx(float(volume.split()[0]))


def test_the_class_is_made_in_whole_vessels(book):
    """Fifteen pairs of 150 mL are 2.25 L by hand, which five flasks of half a litre hold."""
    practical = book.practicals[THIOSULFATE]
    volume, mass = make_up(practical, book, given(practical, "make-up"))
    assert volume.value.m_as("L") == pytest.approx(2.5)
    assert mass.value.m_as("g") == pytest.approx(0.16 * 2.5 * 248.18, rel=0.001)


def test_a_stock_that_is_weaker_is_refused(book):
    practical = book.practicals[THIOSULFATE]
    weak = as_strong_as(book, "hydrochloric-acid-5", "1 mol/dm³")
    with pytest.raises(CannotWork, match="weaker"):
        dilution(practical, weak, given(practical, "dilution"))


def test_a_stock_of_something_else_is_refused(book):
    practical = book.practicals[THIOSULFATE]
    other = {**given(practical, "dilution"), "stock": "copper-sulfate-solution"}
    with pytest.raises(CannotWork, match="cannot be made"):
        dilution(practical, book, other)


@pytest.mark.parametrize("vessel", ["0 mL", "3 g", "0.001 mL"])
def test_vessels_that_are_none_are_refused(book, vessel):
    practical = with_numbers(book.practicals[THIOSULFATE], flask=vessel)
    with pytest.raises(CannotWork):
        make_up(practical, book, {"item": "thiosulfate-solution", "vessel": "flask"})


def test_what_has_no_strength_is_refused(book):
    practical = book.practicals[THIOSULFATE]
    with pytest.raises(CannotWork):
        make_up(practical, book, {"item": "graph-paper", "vessel": "thiosulfate vessel"})
