"""A formula refuses what it does not hold for, and its arithmetic proves its units."""

import pytest

from clampstand.units import OutOfRange, Quantity, Takes, UnlikeUnits, exp, formula, ln, q, sqrt


@formula("J", "E = C·V²/2", capacitance=Takes("F", at_least=0), voltage=Takes("V", at_most=1e4))
def stored(capacitance: Quantity, voltage: Quantity) -> Quantity:
    """A formula to try."""
    return capacitance * voltage**2 / 2


@formula("J", "E = C·V", capacitance=Takes("F"), voltage=Takes("V"))
def mistaken(capacitance: Quantity, voltage: Quantity) -> Quantity:
    """The square is missing."""
    return capacitance * voltage


def test_it_works_in_any_unit():
    assert stored(q("10 nF"), q("5 kV")).m_as("mJ") == pytest.approx(125)


@pytest.mark.parametrize(("capacitance", "voltage"), [("-1 nF", "5 kV"), ("10 nF", "11 kV")])
def test_out_of_its_range_it_is_an_error(capacitance, voltage):
    with pytest.raises(OutOfRange):
        stored(q(capacitance), q(voltage))


def test_a_wrong_kind_is_an_error():
    with pytest.raises(UnlikeUnits):
        stored(q("10 nF"), q("5 mA"))


def test_a_missing_factor_is_found_by_its_units():
    assert stored.proves_its_units(capacitance=1.0, voltage=2.0) == q("2 J")
    with pytest.raises(UnlikeUnits):
        mistaken.proves_its_units(capacitance=1.0, voltage=2.0)


def test_every_argument_needs_its_unit():
    with pytest.raises(TypeError, match="every argument needs its unit"):
        formula("m", "x")(lambda x: x)


def test_functions_of_pure_numbers_refuse_quantities_with_units():
    ratio = q("1 m") / q("2 m")
    assert exp(ratio).m_as("") == pytest.approx(1.6487212707001282)
    assert ln(ratio).m_as("") == pytest.approx(-0.6931471805599453)
    assert sqrt(q("4 m²")) == q("2 m")
    with pytest.raises(UnlikeUnits):
        exp(q("1 s"))


def test_what_is_out_of_range_is_told_in_the_unit_it_was_given_in():
    """Whoever wrote 12 kV is told of 10 kV, not of 10 000 V."""
    with pytest.raises(OutOfRange, match="-2 mF; it must be at least 0 mF"):
        stored(q("2 mF") * -1, q("5 V"))
    with pytest.raises(OutOfRange, match="12 kV; it must be at most 10 kV"):
        stored(q("2 mF"), q("12 kV"))
