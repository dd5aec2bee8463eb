"""Dead time against a sum by hand and against a counter played through event by event."""

import random

import pytest

from clampstand.calculators.true_rate import rate_mended


def given_of(book):
    practical = book.practicals["alpha-beta-gamma-absorbers"]
    return rate_mended(practical, book, {"reading": "fast reading", "dead time": "dead time"})


def test_true_rate_agrees_with_a_sum_by_hand(book):
    """500/(1 − 500 × 100 µs); Knoll, Radiation Detection and Measurement, chapter 4."""
    (worked,) = given_of(book)
    assert worked.value.m_as("count/s") == pytest.approx(500 / 0.95)


def test_a_blind_counter_played_through_reads_what_the_rate_was_mended_from(book):
    """Random events at the true rate, each followed by 100 µs in which nothing counts."""
    (worked,) = given_of(book)
    chance, now, blind_until, counted = random.Random(7), 0.0, 0.0, 0
    while now < 400:
        now += chance.expovariate(worked.value.m_as("count/s"))
        if now >= blind_until:
            counted, blind_until = counted + 1, now + 100e-6
    assert counted / 400 == pytest.approx(500, rel=0.01)
