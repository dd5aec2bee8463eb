"""Quantities on the page: figures, rounding, grouping and spaces."""

import pytest

from clampstand.units import digits, q, shown, shown_best


@pytest.mark.parametrize(
    ("value", "figures", "towards", "text"),
    [
        (29049.3, 3, "nearest", "29\u202f000"),
        (0.0055, 2, "nearest", "0.0055"),
        (-78.46, 3, "nearest", "−78.5"),
        (1.001, 3, "up", "1.01"),
        (1.009, 3, "down", "1.00"),
        (0.0, 3, "nearest", "0"),
        (999.6, 3, "nearest", "1000"),
        (5437.0, 4, "up", "5437"),
    ],
)
def test_digits(value, figures, towards, text):
    assert digits(value, figures, towards) == text


@pytest.mark.parametrize(
    ("quantity", "kind", "text"),
    [
        ("0.0001 A", "current", "100\u00a0µA"),
        ("0.125 J", "energy", "125\u00a0mJ"),
        ("178800 Bq", "activity", "179\u00a0kBq"),
        ("0.0055 µSv", "dose", "5.50\u00a0nSv"),
        ("90 min", "time", "1.50\u00a0h"),
        ("0 h", "time", "0\u00a0s"),
        ("0 mSv", "dose", "0\u00a0Sv"),
    ],
)
def test_the_unit_suits_the_size(quantity, kind, text):
    assert shown_best(q(quantity), kind) == text


def test_no_space_before_a_degree_sign():
    assert shown(q("45 deg"), "°", "angle") == "45.0°"
    assert shown(q("-78.5 °C"), "°C", "temperature") == "−78.5\u00a0°C"
