"""What cannot be had today says so: counts of an ageing source, and snow on a warm day."""

import datetime as dt
from dataclasses import replace

import pytest

from clampstand.calculators.feasible import too_slow
from clampstand.calculators.snow import snow_yield
from clampstand.calculators.worked import CannotWork
from clampstand.model.book import Book
from clampstand.units import q, read_amount


def on(book: Book, day: dt.date) -> Book:
    return replace(book, department=book.department.model_copy(update={"computed_for": day}))


def test_an_ageing_source_gives_its_counts_too_late_one_day(book: Book) -> None:
    """306 s of 400 s are needed on 2026-01-15; caesium-137, of 30.17 years, doubles that in 30.17 years.

    By hand: 400 s are needed after 30.17 · log₂(400/306) = 11.7 years, in the autumn of 2037.
    """
    practical = book.practicals["inverse-square-law"]
    assert not [
        slow for slow in too_slow(practical, on(book, dt.date(2037, 3, 1))) if slow.source.id == "S-G2"
    ]
    late = [slow for slow in too_slow(practical, on(book, dt.date(2038, 3, 1))) if slow.source.id == "S-G2"]
    assert [slow.available for slow in late] == ["fifth time, 400 s"]
    assert late[0].time.value > q("400 s")


def test_counts_without_a_time_of_their_own_have_the_lesson(book: Book) -> None:
    """Cobalt-60 halves in 5.27 years: 1900 s on 2026-01-15 are more than an hour ten years later."""
    practical = book.practicals["inverse-square-law"]
    late = [slow for slow in too_slow(practical, on(book, dt.date(2036, 1, 15))) if slow.source.id == "S-G1"]
    assert late
    assert late[0].available == f"the whole lesson, {practical.lesson}"


def test_no_snow_is_made_above_the_critical_temperature(book: Book) -> None:
    """30.98 °C by the NIST Chemistry WebBook (304.13 K)."""
    practical = book.practicals["making-dry-ice"]
    entry = next(entry for entry in practical.expect if entry.compute == "snow-yield")
    name = entry.given["temperature"]

    number = practical.numbers[name].model_copy(update={"value": read_amount("32 °C")})
    warm = practical.model_copy(update={"numbers": {**practical.numbers, name: number}})
    with pytest.raises(CannotWork, match=r"at 32 °C a cylinder holds no liquid .* 31\.0 °C"):
        snow_yield(warm, book, entry.given)
