"""The day sheets, what is due and the sheets to fill in: what they must say, from a small timetable."""

import datetime as dt
import html
import re
from collections.abc import Callable
from pathlib import Path

import pytest

import tiny
from clampstand.build import handbook, site_pages
from clampstand.model.book import Book
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.due import Due, dues, tasks_of

Write = Callable[..., Path]

PEOPLE = """\
T1: {role: physics teacher, may: [teach, sign off]}
T2: {role: physics teacher, may: [teach, sign off]}
TEC1: {role: technician, may: [prepare, count, test]}
"""
SIGNED = """\
date,person,practical,skill,level,by
2025-09-01,T1,sparks,,4,T2
2025-09-01,T1,,forceps-work,4,T2
"""
WEEK = """\
date,period,start,room,practical,teacher,class size,age,cover,observer
2026-01-15,1,09:00,lab,sparks,T1,24,15,no,
2026-01-15,2,10:00,lab,sparks,T1,21,15,no,
2026-01-19,1,09:00,lab,sparks,T1,24,15,no,
"""
FROST = "frost: {name: frost, consumable: yes, lead: 2 days}\n"
IN_KIT = "  - {item: plates, per: class}\n"
PREPARED = "prepare: [{do: Look., by: technician, takes: 25 min}]\nrun:\n"


def changed() -> dict[str, str | bytes | None]:
    sparks = tiny.TINY["practicals/sparks.yml"]
    kit = f"{IN_KIT}  - {{item: frost, per: group, amount: 0.5 kg, allowance: 1 kg}}\n"
    return {
        "department/people.yml": PEOPLE,
        "records/sign-offs.csv": SIGNED,
        "timetable/week.csv": WEEK,
        "kit/all.yml": f"{tiny.TINY['kit/all.yml']}{FROST}",
        "practicals/sparks.yml": sparks.replace(IN_KIT, kit).replace("run:\n", PREPARED),
    }


def pages_of(content: Path) -> dict[str, SitePage]:
    return {page.uri: page for page in site_pages(handbook(content))}


def words(page: SitePage, from_: str = "", to: str = "") -> str:
    article = page.html
    if from_:
        article = article[article.index(f'id="{from_}"') :]
        article = article[: article.index(f'id="{to}"')] if to else article
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", article)).replace("\u00a0", " ").split())


@pytest.fixture
def pages(tiny_content: Write) -> dict[str, SitePage]:
    return pages_of(tiny_content(changed()))


def test_every_day_of_the_timetable_has_its_sheet(pages: dict[str, SitePage]) -> None:
    assert [uri for uri in pages if uri.startswith("days/")] == [
        "days/index.html",
        "days/2026-01-15.html",
        "days/2026-01-19.html",
    ]
    assert "days/2026-01-19.html" in pages["days/index.html"].html


def test_a_lesson_is_put_out_for_its_own_class(pages: dict[str, SitePage]) -> None:
    """24 and 21 pupils in threes are 8 and 7 groups of half a kilogram, with a kilogram more a class."""
    sheet = pages["days/2026-01-15.html"]
    assert "4 kg 8 × 0.5 kg frost and 1 kg more" in words(sheet, "period-1", "period-2")
    assert "3.5 kg 7 × 0.5 kg frost and 1 kg more" in words(sheet, "period-2", "shelf")
    shelf = words(sheet, "shelf")
    assert "frost 9.5 kg" in shelf
    assert "period 1 2" in shelf
    assert "5 kg lab 4.5 kg lab" in shelf
    assert "plates 1" in shelf, "the same plates serve both periods"


def test_it_says_when_to_begin_and_which_source_goes_where(pages: dict[str, SitePage]) -> None:
    sheet = pages["days/2026-01-15.html"]
    begin = words(sheet, "begin", "sources")
    assert begin.index("08:35 Sparks , period 1") < begin.index("09:35 Sparks , period 2")
    assert "S-1 1, 09:00 store T1 in the Laboratory, Sparks" in words(sheet, "sources", "period-1")
    for box in ("S-1, period 1, out", "S-1, period 1, back"):
        assert f'aria-label="{box}"' in sheet.html


def test_what_must_be_ordered_is_on_the_last_sheet_before(pages: dict[str, SitePage]) -> None:
    """For Monday the 19th with two days' notice the order goes out by Saturday: on Thursday's sheet."""
    thursday = words(pages["days/2026-01-15.html"], "order", "begin")
    assert (
        "frost, 5 kg by Saturday 17 January 2026, for Sparks on Monday 19 January 2026, period 1" in thursday
    )
    assert "Nothing has to be ordered" in words(pages["days/2026-01-19.html"], "order", "begin")


def test_what_was_ordered_before_is_asked_for_on_the_day_of_its_lesson(pages: dict[str, SitePage]) -> None:
    monday = words(pages["days/2026-01-19.html"], "awaited", "begin")
    assert (
        "frost, 5 kg , to be ordered by Saturday 17 January 2026, for Sparks, period 1: has it come?"
        in monday
    )


def test_the_preparation_sheet_orders_what_waits_as_well(pages: dict[str, SitePage]) -> None:
    """Half a kilogram for each group of the department's class, and a kilogram that waits."""
    sheet = words(pages["prep/sparks.html"])
    told = re.search(
        r"Order ([\d.]+) kg frost , 2 days before: ([\d.]+) kg \d+ × 0.5 kg and 1 kg more", sheet
    )
    assert told is not None
    assert float(told[1]) == float(told[2]) + 1


def test_clashes_stand_on_top(tiny_content: Write) -> None:
    row = "2026-01-15,1,09:00,lab,sparks,T2,24,15,no,T1\n"
    shown = pages_of(tiny_content({**changed(), "timetable/week.csv": f"{WEEK}{row}"}))
    sheet = shown["days/2026-01-15.html"]
    clashes = words(sheet, "clashes", "order")
    assert "S-1" in clashes
    assert "lab is taken twice in period 1 on 15 January 2026" in clashes.replace("\u00a0", " ")
    assert "to look at" in words(shown["days/index.html"])
    assert sheet.html.index('id="clashes"') < sheet.html.index('id="order"')
    assert "None found" in words(shown["days/2026-01-19.html"], "clashes", "order")


def test_without_a_timetable_the_page_says_so(tiny_content: Write) -> None:
    shown = pages_of(tiny_content())
    assert "There is no timetable" in words(shown["days/index.html"])
    assert [uri for uri in shown if uri.startswith("days/")] == ["days/index.html"]


LIMIT = """\
  - key: radiation.count-interval
    title: Counts
    layer: local rule
    at_most_interval: 1 month
    citation: rules
    read_on: 2025-09-01
    check_again_by: 2026-09-01
"""


def book_of(content: Path) -> Book:
    return handbook(content).book


def test_what_is_due_has_its_day_and_who_sees_to_it(tiny_content: Write) -> None:
    limits = f"{tiny.TINY['limits/house.yml']}{LIMIT}"
    found = {
        (due.what, due.which): due
        for due in dues(book_of(tiny_content({**changed(), "limits/house.yml": limits})))
    }
    days = {key: due.by for key, due in found.items()}
    assert days[("count", "S-1")] == dt.date(2026, 2, 1)
    assert days[("leak test", "S-1")] == dt.date(2027, 6, 1)
    assert days[("electrical test", "U-1")] == dt.date(2026, 6, 1)
    assert days[("sign-off in a skill to renew", "Working with forceps")] == dt.date(2026, 9, 1)
    assert found[("count", "S-1")].who == "TEC1"
    assert found[("sign-off in a skill to renew", "Working with forceps")].who == "T1"
    assert found[("page to read through again", "Sparks")].who == "Technician"


def test_what_the_same_people_do_by_the_same_day_is_one_row() -> None:
    day, later = dt.date(2026, 2, 8), dt.date(2026, 3, 8)
    counts = [Due(by, "count", source, "", "TEC1") for by in (later, day) for source in ("S-2", "S-1")]
    rows = [
        (task.by, [due.which for due in task.of]) for task in tasks_of([*counts, Due(day, "test", "U-1", "")])
    ]
    assert rows == [(day, ["S-1", "S-2"]), (day, ["U-1"]), (later, ["S-1", "S-2"])]


def test_what_is_due_stands_by_how_soon_and_names_what_to_order(tiny_content: Write) -> None:
    limits = f"{tiny.TINY['limits/house.yml']}{LIMIT}"
    page = pages_of(tiny_content({**changed(), "limits/house.yml": limits}))["due/index.html"]
    soon, later = words(page, "soon", "later"), words(page, "later")
    assert "17 January 2026 order frost, 5 kg, for 19 January 2026 TEC1" in soon
    assert "1 February 2026 count S-1 TEC1" in soon
    assert "1 June 2026 electrical test U-1" in later
    assert "order" not in later


def test_a_newer_record_moves_what_is_due(tiny_content: Write) -> None:
    row = "date,source,result,could see,instrument,by\n2026-01-10,S-1,pass,9 Bq,scaler,TEC1\n"
    found = dues(book_of(tiny_content({**changed(), "records/leak-tests.csv": row})))
    assert [due.by for due in found if due.what == "leak test"] == [dt.date(2028, 1, 10)]


def test_the_sheets_to_fill_in_name_every_source_that_is_here(pages: dict[str, SitePage]) -> None:
    page = pages["sources/index.html"]
    count = words(page, "count-sheet", "use-log")
    assert "S-1 store Am-241, A1" in count
    assert "1 source. Enter" in count
    assert words(page, "use-log").count("S-1") == 2


@pytest.mark.parametrize(("status", "ends"), [("in use", 1), ("awaiting disposal", 0)])
def test_the_life_of_a_source_ends_only_while_it_is_worked_with(
    tiny_content: Write, status: str, ends: int
) -> None:
    sources = tiny.TINY["department/sources.yml"].replace("status: in use", f"status: {status}")
    content = {**changed(), "department/sources.yml": f"{sources}  working_life: 8 years\n"}
    found = dues(book_of(tiny_content(content)))
    assert [due.which for due in found if due.what == "end of working life"] == ["S-1"] * ends


def test_what_pupils_and_adults_take_alike_is_put_out_in_one_line(tiny_content: Write) -> None:
    lines = "  - {item: plates, per: pupil, spare: 1}\n  - {item: plates, per: adult, count: 2}\n"
    sparks = str(changed()["practicals/sparks.yml"]).replace(IN_KIT, lines, 1)
    day = words(
        pages_of(tiny_content({**changed(), "practicals/sparks.yml": sparks}))["days/2026-01-19.html"]
    )
    assert "27 plates (1 of them spare)" in day  # 24 pupils, one spare, and two for the one adult
    assert day.count("27 plates") == 1


def test_what_is_out_of_use_stands_over_the_kit_until_it_is_cleared(tiny_content: Write) -> None:
    table = "date,thing,fault,by,cleared,cleared by\n2026-01-10,plates,bent,TEC1,,\n"
    cleared = table.replace("TEC1,,", "TEC1,2026-01-12,TEC1")
    for rows, told in ((table, True), (cleared, False)):
        page = pages_of(tiny_content({**changed(), "records/faults.csv": rows}))["kit/index.html"]
        assert ("plates : bent, found on 10 January 2026 by TEC1" in words(page)) == told
