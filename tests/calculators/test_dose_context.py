"""Doses in context, against sums done by hand from the published averages."""

import pytest

from clampstand.calculators.dose_context import doses_in_context, likened, part_of
from clampstand.calculators.worked import Worked
from clampstand.units import q


def dose(text: str) -> Worked:
    return Worked("dose-of-the-lesson/x/teacher", "Dose", q(text), "dose", text, "H = Ḣ·t", ())


def test_a_dose_is_likened_to_both_published_averages(book):
    """2.4 mSv a year is 0.2738 µSv an hour (8766 h), 2.7 mSv is 0.308 µSv an hour."""
    table = doses_in_context([dose("0.1 µSv")], book)
    assert table is not None
    assert [str(one.figure.value) for one in table.comparisons] == ["2.4 mSv/year", "2.7 mSv/year"]
    assert table.rows[0].likened == ("22\u00a0min", "20\u00a0min")
    assert table.rows[0].part == "one part in 10\u202f000"


def test_numbers_of_other_kinds_are_left_alone(book):
    rate = Worked("x", "Rate", q("1 µSv/h"), "dose rate", "1 µSv/h", "", ())
    assert doses_in_context([rate], book) is None


@pytest.mark.parametrize(
    ("amount", "words"),
    [
        ("76 pSv", "one part in 13\u202f000\u202f000"),
        ("1 mSv", "1 times"),
        ("1.5 mSv", "1.5 times"),
        ("0.3 mSv", "one part in 3"),
        ("0.06 mSv", "one part in 16"),
        ("0.0001 pSv", "less than one part in a thousand million"),
        ("0 Sv", "less than one part in a thousand million"),
    ],
)
def test_a_part_of_the_limit_is_rounded_towards_the_greater_part(amount, words):
    assert part_of(q(amount), q("1 mSv")) == words


def test_nobody_is_told_of_milliseconds():
    assert likened(q("0.4 s")) == "less than a second"
    assert likened(q("1 s")) == "1.0\u00a0s"
