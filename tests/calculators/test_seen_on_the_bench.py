"""What measured things give: areas, wavelengths, e/m and ratios, against geometry and CODATA."""

import pytest
from scipy import constants

from calculators.lessons import given, with_numbers
from clampstand.calculators.beam_deflection import specific_charge_seen
from clampstand.calculators.fringe_spacing import wavelength_seen
from clampstand.calculators.rate_ratio import rate_ratio
from clampstand.calculators.round_area import round_area
from clampstand.calculators.worked import CannotWork


def test_area_of_a_zone_is_that_of_a_circle(book):
    """Twenty-five millimetres across: π · 12.5²."""
    practical = book.practicals["culturing-bacteria"]
    (worked,) = round_area(practical, book, given(practical, "round-area"))
    assert worked.value.m_as("mm**2") == pytest.approx(constants.pi * 12.5**2)


def test_fringes_of_a_textbook_give_its_wavelength(book):
    """Sodium light, 589.3 nm, slits 0.5 mm apart, screen 1 m off: fringes 1.1786 mm wide."""
    numbers = {"fringe": "1.1786 mm", "separation": "0.5 mm", "distance": "1 m"}
    practical = with_numbers(book.practicals["laser-double-slit"], **numbers)
    (worked,) = wavelength_seen(practical, book, {name: name for name in numbers})
    assert worked.value.m_as("nm") == pytest.approx(589.3, rel=1e-6)


def test_charge_by_mass_meets_codata(book):
    """CODATA by scipy.constants; without relativity it is 0.2 % low at 2.5 kV, and 133 mm is rounded."""
    practical = book.practicals["electron-beam-deflection"]
    (worked,) = specific_charge_seen(practical, book, given(practical, "specific-charge"))
    assert worked.value.m_as("C/kg") == pytest.approx(constants.e / constants.m_e, rel=0.01)
    assert worked.shown.endswith("× 10¹¹\u00a0C/kg")


@pytest.mark.parametrize(("far", "times"), [("200 mm", 4), ("300 mm", 9), ("1 m", 100)])
def test_the_rate_falls_with_the_square(book, far, times):
    practical = with_numbers(book.practicals["handling-a-sealed-source"], near="100 mm", far=far)
    (worked,) = rate_ratio(practical, book, {"near": "near", "far": "far"})
    assert worked.value.m_as("") == pytest.approx(times)


def test_nearer_than_the_law_holds_is_refused(book):
    practical = with_numbers(book.practicals["handling-a-sealed-source"], near="2 mm", far="1 m")
    with pytest.raises(CannotWork, match="near"):
        rate_ratio(practical, book, {"near": "near", "far": "far"})
