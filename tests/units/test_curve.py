"""Curves: exact on their rows, between them a straight line of logarithms, and refused beyond them."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from clampstand.units import Curve, OutOfRange, UnlikeUnits, quantity

SQUARES = Curve("m", "m**2", tuple((float(x), float(x * x)) for x in (1, 2, 5, 10, 40)))
EDGE = Curve("keV", "cm**2/g", ((80.0, 2.4), (88.0, 1.9), (88.0, 7.7), (100.0, 5.5)))


@given(st.floats(1, 40))
def test_a_power_law_is_met_everywhere_and_back(x: float) -> None:
    y = SQUARES.at(quantity(x, "m"))
    assert y.m_as("m**2") == pytest.approx(x * x, rel=1e-9)
    assert SQUARES.where(quantity(min(max(y.magnitude, 1), 1600), "m**2")).m_as("m") == pytest.approx(
        x, rel=1e-9
    )


@given(st.floats(600, 800))
def test_between_rows_it_agrees_with_numpy_on_logarithms(x: float) -> None:
    curve = Curve("keV", "cm**2/g", ((600.0, 0.1248), (800.0, 0.0887)))
    theirs = np.exp(np.interp(np.log(x), np.log([600, 800]), np.log([0.1248, 0.0887])))
    assert curve.at(quantity(x / 1000, "MeV")).m_as("cm**2/g") == pytest.approx(theirs, rel=1e-9)


def test_on_its_rows_it_gives_the_rows() -> None:
    for x, y in SQUARES.rows:
        assert SQUARES.at(quantity(x, "m")).m_as("m**2") == pytest.approx(y, rel=1e-12)


def test_an_edge_has_two_sides_and_its_upper_one_holds_on_it() -> None:
    for x, y in ((87.999999, 1.9), (88.0, 7.7), (88.000001, 7.7)):
        assert EDGE.at(quantity(x, "keV")).m_as("cm**2/g") == pytest.approx(y, rel=1e-4)


@pytest.mark.parametrize("x", [0.5, 41, -1, float("nan")])
def test_beyond_the_rows_it_refuses(x: float) -> None:
    with pytest.raises(OutOfRange, match="runs from 1 to 40"):
        SQUARES.at(quantity(x, "m"))


@pytest.mark.parametrize("y", [0.5, 1601, -1, float("nan")])
def test_beyond_the_rows_it_refuses_the_way_back(y: float) -> None:
    with pytest.raises(OutOfRange, match="runs from 1 to 1600"):
        SQUARES.where(quantity(y, "m**2"))


def test_a_table_that_falls_has_no_way_back() -> None:
    with pytest.raises(OutOfRange, match="rise"):
        EDGE.where(quantity(2, "cm**2/g"))


def test_unlike_units_are_refused() -> None:
    with pytest.raises(UnlikeUnits):
        SQUARES.at(quantity(2, "s"))


@pytest.mark.parametrize("rows", [((1.0, 1.0),), ((2.0, 1.0), (1.0, 1.0)), ((1.0, 0.0), (2.0, 1.0))])
def test_rows_that_make_no_curve_are_refused(rows: tuple) -> None:
    with pytest.raises(ValueError, match="curve"):
        Curve("m", "m", rows)
