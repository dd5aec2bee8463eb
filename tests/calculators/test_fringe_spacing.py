"""Fringes against two published exercises and the path difference worked out exactly."""

import math

import pytest

from calculators.lessons import given, with_numbers
from clampstand.calculators.fringe_spacing import fringe_spacing

PRACTICAL = "laser-double-slit"
NAMES = {"wavelength": "w", "distance": "d", "separation": "s"}


@pytest.mark.parametrize(
    ("wavelength", "distance", "separation", "millimetres"),
    [
        (
            "600 nm",
            "2 m",
            "0.3 mm",
            4.0,
        ),  # tutotveti.ru 19943743 gives 4 mm; 600 nm by hand
        (
            "633 nm",
            "1.00 m",
            "0.200 mm",
            3.17,
        ),  # He-Ne laser, quizlet 298d7ef5; 3.165 mm by hand
    ],
)
def test_published_exercises(book, wavelength, distance, separation, millimetres):
    practical = with_numbers(book.practicals[PRACTICAL], w=wavelength, d=distance, s=separation)
    (worked,) = fringe_spacing(practical, book, NAMES)
    assert worked.value.m_as("mm") == pytest.approx(millimetres, rel=0.002)


def test_the_tenth_fringe_lies_where_the_paths_differ_by_ten_waves(book):
    """Pythagoras on both paths, without the small angle: ten spacings, to a part in a thousand."""
    practical = book.practicals[PRACTICAL]
    (worked,) = fringe_spacing(practical, book, given(practical, "fringe-spacing"))
    high = 10 * worked.value.m_as("m")
    paths = [math.hypot(2.0, high + half) for half in (0.125e-3, -0.125e-3)]
    assert paths[0] - paths[1] == pytest.approx(10 * 650e-9, rel=1e-3)
    ten = practical.numbers["ten fringes"].value.value
    assert ten.m_as("m") == pytest.approx(high, rel=0.001)
