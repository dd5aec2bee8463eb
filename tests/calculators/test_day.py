"""The day of the preparation room: who gets which source against scipy, sums over lessons by hand."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.sparse import csr_array
from scipy.sparse.csgraph import maximum_bipartite_matching

import tiny
from clampstand.calculators.day import (
    by_period,
    kit_for,
    known_lessons,
    lessons_to_come,
    set_up_length,
    sources_for,
    start_by,
    usable,
)
from clampstand.calculators.sign_offs import held, lacking
from clampstand.findings import Spot
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson
from clampstand.model.record import FaultReport, SignOff
from clampstand.reading import read

SIX = [f"S-{number}" for number in range(1, 7)]


def lesson(practical: str, number: int = 1, **also: str) -> TimetabledLesson:
    plain = {
        "date": "2026-01-15",
        "period": "2",
        "start": "09:50",
        "room": "lab",
        "practical": practical,
        "teacher": "T1",
        "class size": "24",
        "age": "15",
        "cover": "no",
    }
    row = TimetabledLesson.model_validate({**plain, **also})
    return row.placed(f"w.{number}", Spot("timetable/w.csv", (number,)))


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    found = read(tiny.write(tmp_path_factory.mktemp("day"))).book
    assert found is not None
    return found


def with_slots(book: Book, choices: Sequence[Sequence[str]]) -> Book:
    """A book with six sources and one practical for each list of choices."""
    source = book.sources["S-1"]
    practicals = {
        f"p{number}": tiny.practical(f"p{number}", sources=[{"one_of": list(names)}])
        for number, names in enumerate(choices)
    }
    sources = {name: source.model_copy().placed(name, source.spot) for name in SIX}
    return replace(book, sources=sources, practicals=practicals)


@settings(max_examples=200, deadline=None)
@given(st.lists(st.lists(st.sampled_from(SIX), min_size=1, max_size=3, unique=True), max_size=8))
def test_as_many_lessons_get_a_source_as_scipy_finds(book: Book, choices: list[list[str]]) -> None:
    """scipy.sparse.csgraph.maximum_bipartite_matching (Hopcroft and Karp) on the same graph."""
    asked = with_slots(book, choices)
    wanted = sources_for([lesson(f"p{n}", n) for n in range(len(choices))], asked)
    given_out = [one.given for one in wanted if one.given]
    assert len(set(given_out)) == len(given_out)
    assert all(one.given is None or one.given in one.choices for one in wanted)
    graph = csr_array(np.array([[name in names for name in SIX] for names in choices] or [[False] * 6]))
    assert len(given_out) == np.count_nonzero(maximum_bipartite_matching(graph, perm_type="column") >= 0)


def test_a_long_row_of_second_choices_is_no_trouble(book: Book) -> None:
    source = book.sources["S-1"]
    names = [f"L-{number}" for number in range(1500)]
    many = replace(
        book,
        sources=dict.fromkeys(names, source),
        practicals={
            f"p{n}": tiny.practical(f"p{n}", sources=[{"one_of": [names[max(n - 1, 0)], names[n]]}])
            for n in range(1, 1500)
        }
        | {"p0": tiny.practical("p0", sources=[{"one_of": [names[0]]}])},
    )
    asked = [lesson(f"p{n}", n) for n in range(1, 1500)] + [lesson("p0", 0)]
    assert all(one.given for one in sources_for(asked, many))


def test_the_first_choice_is_given_where_it_is_free(book: Book) -> None:
    asked = with_slots(book, [["S-2", "S-1"], ["S-1", "S-3"]])
    assert [one.given for one in sources_for([lesson("p0"), lesson("p1", 2)], asked)] == ["S-2", "S-1"]


def test_kit_is_for_the_class_of_each_lesson(book: Book) -> None:
    """24 in groups of 3 are 8 groups, 25 are 9: worked by hand."""
    kit = [
        {"item": "plates", "per": "group", "count": "2", "spare": "1"},
        {"item": "forceps", "per": "class"},
    ]
    asked = replace(book, practicals={"p0": tiny.practical("p0", kit=kit)})
    needed = kit_for([lesson("p0"), lesson("p0", 2, **{"class size": "25"})], asked)
    assert [(put.total.count, put.without_spares) for put in needed["plates"]] == [(17, 16), (19, 18)]
    assert [put.total.count for put in needed["forceps"]] == [1, 1]


def test_what_only_preparing_takes_is_not_in_the_room(book: Book) -> None:
    kit = [{"item": "plates", "per": "class", "phase": "prepare"}, {"item": "forceps", "per": "class"}]
    asked = replace(book, practicals={"p0": tiny.practical("p0", kit=kit)})
    assert set(kit_for([lesson("p0")], asked)) == {"plates", "forceps"}
    assert set(kit_for([lesson("p0")], asked, but="prepare")) == {"forceps"}


def test_preparing_begins_so_long_before(book: Book) -> None:
    steps = [{"do": "Look.", "by": "technician", "takes": "20 to 25 min"}]
    asked = replace(book, practicals={"p0": tiny.practical("p0", prepare=steps, set_up=steps)})
    assert set_up_length(lesson("p0"), asked).m_as("min") == pytest.approx(50)
    assert start_by(lesson("p0"), asked) == dt.datetime(2026, 1, 15, 9, 0)


def test_usable_are_units_in_use_or_what_is_owned_less_faults(book: Book) -> None:
    assert usable("supply", book) == 1
    assert usable("plates", book) is None
    owned = book.kit["plates"].model_copy(update={"owned": 3}).placed("plates", book.kit["plates"].spot)
    rows = [{"date": "2026-01-10", "thing": "plates", "fault": "bent", "by": "T1"}] * 2
    faults = {f"f{n}": FaultReport.model_validate(row) for n, row in enumerate(rows)}
    assert usable("plates", replace(book, kit={**book.kit, "plates": owned}, faults=faults)) == 1


def test_periods_and_what_is_to_come(book: Book) -> None:
    rows = [
        lesson("sparks", 1, date="2026-01-14"),
        lesson("sparks", 2),
        lesson("sparks", 3),
        lesson("sparks", 4, period="3", start="11:10"),
        lesson("unknown", 5),
    ]
    timetabled = replace(book, timetable={row.id: row for row in rows})
    assert len(known_lessons(timetabled)) == 4
    to_come = lessons_to_come(timetabled)
    assert [[row.id for row in together] for together in by_period(to_come)] == [["w.2", "w.3"], ["w.4"]]


def signed(day: str, level: int, number: int) -> SignOff:
    row = {"date": day, "person": "T1", "skill": "forceps-work", "level": str(level), "by": "T2"}
    return SignOff.model_validate(row).placed(f"s.{number}", Spot("records/sign-offs.csv", (number,)))


@pytest.mark.parametrize(
    ("day", "level"),
    [("2025-02-27", 4), ("2025-02-28", 4), ("2025-03-01", 0), ("2024-02-28", None), ("2024-02-29", 4)],
)
def test_a_sign_off_of_29_february_ends_on_28_february(book: Book, day: str, level: int | None) -> None:
    """The skill says 12 months."""
    with_one = replace(book, sign_offs={"s.1": signed("2024-02-29", 4, 1)})
    on = dt.date.fromisoformat(day)
    holds = held("T1", ("skills", "forceps-work"), on, with_one)
    assert (None if holds is None else holds.level_on(on)) == level


def test_the_newest_sign_off_holds_and_of_one_day_the_lower(book: Book) -> None:
    entries = [signed("2025-09-01", 5, 1), signed("2025-10-01", 4, 2), signed("2025-10-01", 3, 3)]
    with_three = replace(book, sign_offs={entry.id: entry for entry in entries})
    holds = held("T1", ("skills", "forceps-work"), dt.date(2025, 12, 1), with_three)
    assert holds is not None
    assert holds.entry.level == 3
    lacks = dict(lacking("T1", "sparks", dt.date(2025, 12, 1), with_three))
    assert set(lacks) == {("practicals", "sparks"), ("skills", "forceps-work")}
