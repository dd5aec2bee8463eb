"""Gas of dry ice against CoolProp and the ratio of molar masses."""

import pytest

from calculators.lessons import given
from clampstand.calculators import CALCULATORS
from clampstand.calculators.gas_of_solid import gas_of_solid
from clampstand.calculators.sheet import work_out
from clampstand.calculators.worked import CannotWork

PRACTICAL = "dry-ice-sublimation"


def test_volume_agrees_with_coolprop(book):
    """Span and Wagner's equation of state in CoolProp, 20 g at 20 °C and 101.325 kPa."""
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    practical = book.practicals[PRACTICAL]
    volume, _ = gas_of_solid(practical, book, given(practical, "gas-of-solid"))
    expected = 0.020 / coolprop.PropsSI("D", "T", 293.15, "P", 101325, "CO2")
    assert volume.value.m_as("m**3") == pytest.approx(expected, rel=0.002)


def test_density_beside_air_is_near_the_ratio_of_molar_masses(book):
    """44.01/28.97, for both are nearly ideal; the gas itself is half a per cent denser."""
    practical = book.practicals[PRACTICAL]
    _, ratio = gas_of_solid(practical, book, given(practical, "gas-of-solid"))
    assert ratio.value.m_as("") == pytest.approx(44.009 / 28.9655, rel=0.008)
    assert ratio.shown == "1.53 times"


def test_an_item_that_is_no_known_gas_is_refused_in_words(book):
    practical = book.practicals[PRACTICAL]
    with pytest.raises(CannotWork):
        gas_of_solid(practical, book, {"item": "balance", "mass": "one piece"})


def test_what_two_masses_have_in_common_is_told_once(book):
    """The density beside air hangs on no mass, so it is told with the first of two masses and not again."""
    practical = book.practicals[PRACTICAL]
    sheet = work_out(practical, book, CALCULATORS)
    told = [number.id for _, result in sheet.told_once if isinstance(result, tuple) for number in result]
    assert told.count("gas-of-solid/volume") == 2
    assert told.count("gas-of-solid/density-beside-air") == 1
    assert len(sheet.numbers) == len(list(sheet.told_once))
