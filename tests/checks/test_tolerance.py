"""Ranges widened by a tolerance, worked out by hand."""

import pytest

from clampstand.checks.tolerance import widened
from clampstand.units import is_same, q, read_amount


@pytest.mark.parametrize(
    ("amount", "within", "low", "high"),
    [
        ("100 mm", "15 %", "85 mm", "115 mm"),
        ("100 mm", "a factor of two", "50 mm", "200 mm"),
        ("100 mm", "a factor of 2.5", "40 mm", "250 mm"),
        ("100 mm", "1 cm", "90 mm", "110 mm"),
        ("30 mm to 40 mm", "10 %", "27 mm", "44 mm"),
        ("-75 °C to -60 °C", "5 K", "-80 °C", "-55 °C"),
        ("100 mm", "by eye", "10 mm", "1 m"),
        ("100 mm", "a factor of nothing", "10 mm", "1 m"),
        ("100 mm", None, "10 mm", "1 m"),
    ],
)
def test_widened(amount, within, low, high):
    lowest, highest = widened(read_amount(amount), within)
    assert is_same(lowest, q(low))
    assert is_same(highest, q(high))
