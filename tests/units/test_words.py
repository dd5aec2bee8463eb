"""Quantities in words, by hand: what is one, and what only looks like one."""

import pytest

from clampstand.units import amounts_in_words, is_same, q


@pytest.mark.parametrize(
    ("sentence", "meant"),
    [
        ("Stand about a metre back.", "1 m"),
        ("Stand a couple of metres back.", "2 m"),
        ("a two-metre gap", "2 m"),
        ("Wait half a minute.", "30 s"),
        ("Wait half a second.", "0.5 s"),
        ("for a quarter of an hour", "15 min"),
        ("Leave 2.5 metres free.", "250 cm"),
        ("Twelve volts are enough.", "12 V"),
        ("Keep six feet away.", "6 ft"),
        ("Take a\nlitre of water.", "1 L"),
    ],
)
def test_it_is_read(sentence, meant):
    (found,) = [amount for _, amount in amounts_in_words(sentence)]
    assert is_same(found.value, q(meant))


@pytest.mark.parametrize(
    "sentence",
    [
        "A second load never comes in.",
        "One crosses each square centimetre in a minute.",
        "It drops a few hundredths of a volt.",
        "Lay a metre rule beside it.",
        "It is a minuet.",
        "a metre-long rod",
        "Read the meter.",
    ],
)
def test_it_is_left_alone(sentence):
    assert list(amounts_in_words(sentence)) == []
