"""Who may run a practical, as its page says it."""

import pytest

from clampstand.calculators.sign_offs import level_for
from clampstand.rendering.contents import Contents
from clampstand.rendering.pages.ladder import LEVELS, Rung, ladder
from demo import demo

BOOK = demo().book


@pytest.mark.parametrize(
    ("level", "may"),
    [
        (None, "not yet"),
        (0, "not yet"),
        (1, "not yet"),
        (2, "observer needed"),
        (3, "observer needed"),
        (4, "alone"),
        (5, "alone"),
    ],
)
def test_what_each_level_allows(level: int | None, may: str):
    assert Rung("T1", "teacher", level).may == may


def test_there_are_words_for_every_level():
    assert len(LEVELS) == 6


def test_everybody_who_teaches_stands_where_the_records_say():
    """T3's newest rows: level 3 for the practical and for its skill, on 10 November 2025."""
    contents = Contents(BOOK, {})
    rungs = {rung.code: rung for rung in ladder(BOOK.practicals["handling-a-sealed-source"], contents)}
    assert rungs["T3"].level == 3
    assert rungs["T3"].may == "observer needed"
    assert rungs["T1"].may == "alone"
    assert "TEC1" not in rungs


def test_the_lowest_level_of_all_that_is_asked_for_counts():
    """T3 is at no level for the high-voltage supply, and so at none for what needs it."""
    assert level_for("T3", "spark-counter", BOOK.department.computed_for, BOOK) is None


def test_a_technicians_practical_asks_where_technicians_stand():
    """By people.yml TEC1 and TEC2 prepare and T1 teaches; TEC1 is signed off for making dry ice."""
    contents = Contents(BOOK, {})
    rungs = {rung.code: rung for rung in ladder(BOOK.practicals["making-dry-ice"], contents)}
    assert rungs["TEC1"].may == "alone"
    assert rungs["TEC2"].may == "not yet"
    assert "T1" not in rungs
