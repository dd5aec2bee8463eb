"""Every fact asked of a practical stands in its definition."""

import pytest

from content.finders import FINDERS
from content.side_by_side import FIELDS, HERE, TABLE, asked_for, beside, compared, demo, outcomes, table

PRACTICALS = sorted(demo().book.practicals)


def test_there_is_a_list_for_every_practical_and_no_other() -> None:
    assert sorted(path.stem for path in (HERE / "asked_for").glob("*.yml")) == PRACTICALS


@pytest.mark.parametrize("practical_id", PRACTICALS)
def test_every_field_is_asked_for(practical_id: str) -> None:
    asked = asked_for(practical_id)
    assert tuple(asked) == FIELDS
    assert all(asked[field] for field in FIELDS)
    assert {next(iter(fact)) for facts in asked.values() for fact in facts.values()} <= set(FINDERS)


@pytest.mark.parametrize("practical_id", PRACTICALS)
def test_nothing_asked_for_is_missing(practical_id: str) -> None:
    found = compared(asked_for(practical_id), beside(practical_id))
    assert [f"{one.field}: {one.fact}" for one in found if not one.there] == []


def test_the_table_is_of_today() -> None:
    written = TABLE.read_text(encoding="utf-8")
    assert written == table(outcomes()), (
        "write it anew: PYTHONPATH=tests python tests/content/side_by_side.py"
    )


WRONG = {
    "attended": {"attended": "prepare", "by": "technician", "about": "2 h"},
    "circuit": {"circuit": "eht-supply", "voltage": "hand distance"},
    "cites": {"cites": "en-50191-of-another-year"},
    "emergency": {"emergency": "electric-shock", "says": "keep holding"},
    "exception": {"exception": "time-out"},
    "expects": {"expects": "sparks through paper never stop"},
    "fault": {"fault": "dust magnet"},
    "field": {"field": "lesson", "value": "26 min"},
    "hazard": {"hazard": "high-voltage", "says": "two hands work"},
    "kit": {"kit": "forceps-200", "spare": 2},
    "misconception": {"misconception": "sparks are alive"},
    "no_source": {"no_source": True},
    "nobody_wears": {"nobody_wears": "lead apron"},
    "number": {"number": "hand distance", "value": "90 mm"},
    "ordered": {"ordered": "forceps-200", "before": "3 days"},
    "question": {"question": "why blue"},
    "says": {"says": "aluminium", "in": "brief"},
    "source": {"source": "S-G2"},
    "step": {"step": "run", "signs_out": "another source"},
    "waste": {"waste": "paper-sheet", "route": "sink"},
    "worked": {"worked": "series-current", "gives": "110 µA"},
    "worn": {"worn": "eye-protection", "by": "teacher"},
}
"""For each way to find a fact, one that is not so of the spark counter."""


def test_each_finder_has_something_it_must_not_find() -> None:
    assert set(WRONG) == set(FINDERS)


@pytest.mark.parametrize("kind", sorted(WRONG))
def test_a_finder_does_not_find_what_is_not_there(kind: str) -> None:
    assert not FINDERS[kind](beside("spark-counter"), WRONG[kind])


def test_steps_are_found_in_their_order_only() -> None:
    taken_out = {"step": "run", "takes_out": "source"}
    counted_back = {"step": "run", "counts_back": "source"}
    steps = {"steps": {"counted back": counted_back, "then taken out": taken_out}}
    assert [one.there for one in compared(steps, beside("spark-counter"))] == [True, False]
