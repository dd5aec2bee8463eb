"""What spreadsheets save is read safely or refused at its cell, and never means something else in silence."""

import datetime as dt
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import tiny
from clampstand.findings import Finding, Spot
from clampstand.reading import Reading, read
from clampstand.reading.grid import MOST_ROWS, Grid

PEOPLE = """\
T1: {role: physics teacher, may: [teach, sign off]}
T2: {role: physics teacher, may: teach}
TEC1: {role: technician, may: [prepare, count, test, clear faults]}
"""
COUNTS = "records/source-counts.csv"
HEADER = "date,source,seen,position,condition,by,note"
ROW = "2026-01-08,S-1,yes,store,whole,TEC1,"
Content = Callable[..., Path]


def reading_of(content: Content, table: str | bytes, file: str = COUNTS) -> Reading:
    return read(content({"department/people.yml": PEOPLE, file: table}))


def only(reading: Reading) -> Finding:
    assert len(reading.findings) == 1, [finding.message for finding in reading.findings]
    return reading.findings[0]


def told(finding: Finding) -> str:
    return f"{finding.message} | {finding.mend}"


def test_a_plain_table_is_read_with_the_place_of_every_cell(tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f"{HEADER}\n{ROW}\n")
    assert reading.findings == ()
    (row,) = reading.book.source_counts.values()  # type: ignore[union-attr]
    assert (row.id, row.date, row.source, row.seen, row.by, row.note) == (
        "source-counts.2",
        dt.date(2026, 1, 8),
        "S-1",
        True,
        "TEC1",
        None,
    )
    places = {name: reading.places.of(row.at(name)) for name in ("date", "seen", "by")}
    assert {name: (p.file, p.line, p.column, p.width) for name, p in places.items()} == {
        "date": (COUNTS, 2, 1, 10),
        "seen": (COUNTS, 2, 16, 3),
        "by": (COUNTS, 2, 32, 4),
    }


@pytest.mark.parametrize(
    "table",
    [
        f"\ufeff{HEADER}\n{ROW}\n".encode(),
        f"{HEADER}\r\n{ROW}\r\n".encode(),
        f"{HEADER}\n{ROW}".replace(",", ";").encode(),
        f"{HEADER}\n{ROW}".replace(",", "\t").encode(),
        f"{HEADER},,\n{ROW},,\n,,,,,,,,\n\n".encode(),
        f"\n,,,\n{HEADER}\n\n{ROW}\n".encode(),
        f" Date ,SOURCE,Seen,Position,condition, by,Note\n{ROW}".encode(),
        b'"date","source","seen","position","condition","by","note"\n'
        b'"2026-01-08","S-1","yes","store","whole","TEC1",""\n',
        f"{HEADER}\n{ROW.replace('S-1', ' S-1 ').replace('TEC1', 'TEC1' + chr(160))}".encode(),
    ],
    ids=[
        "mark of UTF-8",
        "Windows lines",
        "semicolons",
        "tabs",
        "empty",
        "late",
        "capitals",
        "quotes",
        "spaces",
    ],
)
def test_what_means_the_same_is_read_the_same(table: bytes, tiny_content: Content) -> None:
    reading = reading_of(tiny_content, table)
    assert reading.findings == ()
    (row,) = reading.book.source_counts.values()  # type: ignore[union-attr]
    assert (row.date.isoformat(), row.source, row.seen, row.by) == ("2026-01-08", "S-1", True, "TEC1")


def test_a_delimiter_inside_a_quoted_cell_is_text(tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f'{HEADER}\n2026-01-08,S-1,yes,"store, ""top"" shelf",whole,TEC1,\n')
    (row,) = reading.book.source_counts.values()  # type: ignore[union-attr]
    assert row.position == 'store, "top" shelf'
    assert reading.places.of(row.at("condition")).column == 43


def test_the_header_alone_says_what_separates_cells(tiny_content: Content) -> None:
    row = "2026-01-08;S-1;yes;store, place 1, behind, the, lead;whole;TEC1;"
    reading = reading_of(tiny_content, f"{HEADER.replace(',', ';')}\n{row}\n")
    assert [r.position for r in reading.book.source_counts.values()] == [  # type: ignore[union-attr]
        "store, place 1, behind, the, lead"
    ]


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ("15/01/2026", "write it as 2026-01-15"),
        ("15.01.2026", "write it as 2026-01-15"),
        ("15/1/26", "write it as 2026-01-15"),
        ("01/15/2026", "write it as 2026-01-15"),
        ("05/01/2026", "may be two days, with the day or the month first | write 2026-01-05 or 2026-05-01"),
        ("05/05/2026", "write it as 2026-05-05"),
        ("31/02/2026", "write year-month-day"),
        ("2026/01/15", "write it as 2026-01-15"),
        ("2026-1-5", "write it as 2026-01-05"),
        ("2026-01-15 00:00:00", "write it as 2026-01-15"),
        ("2026-02-29", "not a day of the calendar"),
        ("15 Jan 2026", "write year-month-day"),
        # 46037 is 15 January 2026 in the count from 1900: ISO/IEC 29500-1, 18.17.4, has 1 for 1900-01-01
        ("46037", "the number a spreadsheet keeps for a day, not a date | show the column as year-month-day"),
        ("46037.375", "mostly 2026-01-15"),
    ],
)
def test_other_ways_of_writing_a_day_are_refused_with_what_was_meant(
    written: str, words: str, tiny_content: Content
) -> None:
    finding = only(reading_of(tiny_content, f"{HEADER}\n{ROW.replace('2026-01-08', written)}\n"))
    assert words in told(finding)
    assert finding.stops
    assert (finding.place.line, finding.place.column, finding.place.width) == (2, 1, len(written))


def test_29_february_is_a_day_in_the_years_that_have_it(tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f"{HEADER}\n{ROW.replace('2026-01-08', '2024-02-29')}\n")
    assert reading.findings == ()


@pytest.mark.parametrize(
    ("header", "row", "words", "place"),
    [
        (
            HEADER.replace("source", "souce"),
            ROW,
            "souce is not a column of this table | did you mean source?",
            (1, 6),
        ),
        (
            HEADER.replace("note", "weather"),
            ROW,
            "weather is not a column of this table | the columns are",
            (1, 40),
        ),
        (HEADER.replace("note", "by"), ROW, "the column by is there twice", (1, 40)),
        (HEADER.replace(",by", ""), ROW.replace(",TEC1", ""), "the column by is missing", (1, 1)),
        (HEADER, f"{ROW}more", "", None),
        (HEADER, f"{ROW},more", "this row has more cells than there are columns", (2, 38)),
        (HEADER, "2026-01-08,S-1,yes", "this row has 3 cells and the table has 7 columns", (2, 1)),
        (HEADER, ROW.replace("S-1", ""), "source is empty in this row | write the source", (2, 12)),
        (HEADER, ROW.replace("yes", "TRUE"), "TRUE is neither yes nor no", (2, 16)),
        (HEADER, ROW.replace("S-1", "S-2"), "S-2 is not one of the sources of the register", (2, 12)),
        (HEADER, ROW.replace("TEC1", "TEC2"), "TEC2 is not one of the role codes", (2, 32)),
        (HEADER, ROW.replace("whole", "=1+1"), "this cell begins like a formula", (2, 26)),
        (HEADER, ROW.replace("whole", "@SUM(A1)"), "this cell begins like a formula", (2, 26)),
        (HEADER, ROW.replace("whole", "-2+3"), "this cell begins like a formula", (2, 26)),
        (HEADER, ROW.replace("whole", '"=HYPERLINK(""x"")"'), "this cell begins like a formula", (2, 26)),
        (HEADER, ROW.replace("whole", "#REF!"), "a spreadsheet's sign for an error", (2, 26)),
        (HEADER, ROW.replace("whole", "#####"), "a spreadsheet's sign for an error", (2, 26)),
        (HEADER, ROW.replace("whole", '"two\nlines"'), "a quotation mark is not closed", (2, 1)),
        (HEADER, ROW.replace("whole", '"whole'), "a quotation mark is not closed", (2, 1)),
        (HEADER, ROW.replace("whole", "wh\x00ole"), "an invisible character here (U+0000)", (2, 28)),
        (HEADER, ROW.replace("whole", "wh\u202eole"), "an invisible character here (U+202E)", (2, 28)),
        (HEADER, f"{ROW}\n{ROW}", "this row is the same as the one in line 2", (3, 1)),
    ],
)
def test_what_is_wrong_is_told_at_its_cell(
    header: str, row: str, words: str, place: tuple[int, int] | None, tiny_content: Content
) -> None:
    reading = reading_of(tiny_content, f"{header}\n{row}\n")
    if place is None:
        assert reading.findings == ()
        return
    finding = only(reading)
    assert words in told(finding)
    assert (finding.place.file, finding.place.line, finding.place.column) == (COUNTS, *place)
    assert finding.stops


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (f"{HEADER}\n{ROW}für\n".encode("cp1252"), "not saved as UTF-8"),
        (f"{HEADER}\n{ROW}\n".encode("utf-16"), "not saved as UTF-8"),
        (f"{HEADER}\n{ROW}\n".encode("utf-16-le"), "an invisible character here (U+0000)"),
        (f"{HEADER}\r{ROW}\r".encode(), "an invisible character here (U+000D)"),
        (b"", "this file is empty"),
        (b"\n\n,,,\n", "this file is empty"),
        (b"x" * 1_000_001, "larger than 1000 kB"),
        (b"PK\x03\x04\x14\x00", "an invisible character here"),
    ],
)
def test_other_files_are_no_tables(raw: bytes, words: str, tiny_content: Content) -> None:
    finding = only(reading_of(tiny_content, raw))
    assert words in told(finding)
    assert finding.stops


def test_a_workbook_is_named_and_not_opened(tiny_content: Content) -> None:
    finding = only(reading_of(tiny_content, b"PK", "records/source-counts.xlsx"))
    assert "read by nobody | save it as CSV in UTF-8" in told(finding)


def test_a_misnamed_table_is_told_what_it_is_called(tiny_content: Content) -> None:
    finding = only(reading_of(tiny_content, HEADER, "records/source-count.csv"))
    assert "did you mean source-counts?" in told(finding)


SOMEBODY = "Quill Marsh"


@pytest.mark.parametrize("name", [SOMEBODY, "Ms Marsh", "QM", "quill.marsh@school.example"])
def test_a_name_where_a_code_belongs_is_refused_and_not_repeated(name: str, tiny_content: Content) -> None:
    finding = only(reading_of(tiny_content, f"{HEADER}\n{ROW.replace('TEC1', name)}\n"))
    assert "role code" in told(finding)
    assert finding.place.column == 32
    assert name not in f"{told(finding)}{finding.found}"


@pytest.mark.parametrize(
    ("remark", "is_fine"),
    [
        ("seen with Ms Marsh", False),
        ("ask Dr. Marsh", False),
        ("ask quill.marsh@school.example", False),
        ("do not miss the label", True),
        ("label worn; ask the radiation supervisor", True),
    ],
)
def test_a_remark_names_nobody(remark: str, is_fine: bool, tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f"{HEADER}\n{ROW}{remark}\n")
    assert (reading.findings == ()) is is_fine
    if not is_fine:
        assert remark not in f"{told(only(reading))}{only(reading).found}"


def test_people_are_codes(tiny_content: Content) -> None:
    finding = only(read(tiny_content({"department/people.yml": "Marsh: {role: teacher}\n"})))
    assert "this is not a role code" in finding.message
    assert "Marsh" not in told(finding)


LEAKS = "records/leak-tests.csv"
LEAK_HEADER = "date,source,result,found,could see,instrument,by"


@pytest.mark.parametrize(
    ("cells", "words"),
    [
        ("2025-12-01,S-1,pass,,8.5 Bq,scaler,TEC1", ""),
        (
            '2025-12-01,S-1,pass,,"8,5 Bq",scaler,TEC1',
            "has a comma in its number | write decimals with a point",
        ),
        ("2025-12-01,S-1,pass,,8.5,scaler,TEC1", "8.5"),
        ("2025-12-01,S-1,pass,,8.5 m,scaler,TEC1", "m is a unit of length"),
        ("2025-12-01,S-1,passed,,8.5 Bq,scaler,TEC1", "did you mean pass?"),
    ],
)
def test_quantities_have_a_point_and_a_unit(cells: str, words: str, tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f"{LEAK_HEADER}\n{cells}\n", LEAKS)
    if not words:
        assert reading.findings == ()
    else:
        assert words in told(only(reading))


WEEK = "timetable/week-03.csv"
WEEK_HEADER = "date,period,start,room,practical,teacher,class size,age,year,cover,observer,second adult"
LESSON = "2026-01-15,2,09:50,lab,sparks,T1,24,15,,no,,"


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("09:50", "9:50:00", ""),
        ("09:50", "9.50", "9.50 is not a time of day | write hours and minutes, as 08:50"),
        ("09:50", "24:50", "24:50 is not a time of day"),
        ("09:50", "0.4097", "is not a time of day"),
        (",24,", ",24.0,", "24.0 is not a whole number"),
        (",15,,", ",15,10,", "how old the class is must be known"),
        (",15,,", ",,,", "how old the class is must be known"),
        (",T1,", ",T9,", "T9 is not one of the role codes"),
        (",no,,", ",no,T1,", "the teacher is named twice"),
        (",sparks,", ",spark,", "did you mean sparks?"),
        (",lab,", ",lob,", "did you mean lab?"),
    ],
)
def test_lessons_of_the_timetable(old: str, new: str, words: str, tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f"{WEEK_HEADER}\n{LESSON.replace(old, new)}\n", WEEK)
    if words:
        assert words in told(only(reading))
        return
    (lesson,) = reading.book.timetable.values()  # type: ignore[union-attr]
    assert (lesson.start, lesson.class_size, lesson.age) == (dt.time(9, 50), 24, 15)


def test_lessons_lie_in_the_order_of_their_time_whatever_file_they_are_in(tiny_content: Content) -> None:
    later = LESSON.replace("09:50", "08:50").replace("01-15", "01-22").replace(",2,", ",1,")
    earlier = LESSON.replace("09:50", "08:50").replace(",2,", ",1,")
    changes = {
        "department/people.yml": PEOPLE,
        WEEK: f"{WEEK_HEADER}\n{later}\n{LESSON}\n",
        "timetable/a.csv": f"{WEEK_HEADER}\n{earlier}\n",
    }
    reading = read(tiny_content(changes))
    assert reading.findings == ()
    assert list(reading.book.timetable) == ["a.2", "week-03.3", "week-03.2"]  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("file", "header", "row", "words"),
    [
        ("sign-offs", "date,person,practical,skill,level,by", "2025-09-01,T2,sparks,,4,T1", ""),
        (
            "sign-offs",
            "date,person,practical,skill,level,by",
            "2025-09-01,T2,sparks,,6,T1",
            "6 is not a level",
        ),
        ("sign-offs", "date,person,practical,skill,level,by", "2025-09-01,T2,,,4,T1", "fill one of the two"),
        ("sign-offs", "date,person,practical,skill,level,by", "2025-09-01,T2,sparks,,4,T2", "themselves"),
        ("faults", "date,thing,fault,by,cleared,cleared by", "2025-09-01,plates,bent,T1,,", ""),
        (
            "faults",
            "date,thing,fault,by,cleared,cleared by",
            "2025-09-01,U-9,bent,T1,,",
            "U-9 is no source, no",
        ),
        (
            "faults",
            "date,thing,fault,by,cleared,cleared by",
            "2025-09-01,U-1,x,T1,2025-09-02,",
            "half cleared",
        ),
        (
            "faults",
            "date,thing,fault,by,cleared,cleared by",
            "2025-09-01,U-1,x,T1,2025-08-31,T1",
            "before it was",
        ),
        (
            "near-misses",
            "date,practical,severity,what,by,closed,closed by",
            "2025-09-01,sparks,bad,x,T1,,",
            "bad",
        ),
        (
            "near-misses",
            "date,practical,severity,what,by,changed,closed,closed by",
            "2025-09-01,sparks,severe,x,T1,,2025-09-02,T1",
            "half closed",
        ),
        (
            "use-log",
            "date,period,source,practical,room,out,out by,back,back by",
            "2026-01-14,2,S-1,sparks,lab,09:50,T1,09:40,T1",
            "came back before it went out",
        ),
    ],
)
def test_rows_make_sense(file: str, header: str, row: str, words: str, tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f"{header}\n{row}\n", f"records/{file}.csv")
    if words:
        assert words in told(only(reading))
    else:
        assert reading.findings == ()


def test_the_newest_record_holds_and_knows_its_cell(tiny_content: Content) -> None:
    rows = "2025-05-31,S-1,fail,2 kBq,8 Bq,scaler,TEC1\n2025-12-01,S-1,pass,,8 Bq,scaler,TEC1\n"
    reading = reading_of(tiny_content, f"{LEAK_HEADER}\n{rows}", LEAKS)
    source = reading.book.sources["S-1"]  # type: ignore[union-attr]
    assert (source.leak_test.last, source.leak_test.result) == (dt.date(2025, 12, 1), "pass")
    assert source.at("leak_test", "last") == Spot(LEAKS, (3, "date"))
    assert source.at("leak_test", "every") == Spot("department/sources.yml", ("S-1", "leak_test", "every"))


def test_an_older_record_leaves_the_register_as_it_is(tiny_content: Content) -> None:
    reading = reading_of(tiny_content, f"{LEAK_HEADER}\n2025-05-31,S-1,fail,2 kBq,8 Bq,x,TEC1\n", LEAKS)
    source = reading.book.sources["S-1"]  # type: ignore[union-attr]
    assert (source.leak_test.last, source.leak_test.result) == (dt.date(2025, 6, 1), "pass")


def test_of_two_tests_of_one_day_the_failed_one_holds(tiny_content: Content) -> None:
    rows = "2025-12-01,S-1,fail,2 kBq,8 Bq,x,TEC1\n2025-12-01,S-1,pass,,8 Bq,x,TEC1\n"
    reading = reading_of(tiny_content, f"{LEAK_HEADER}\n{rows}", LEAKS)
    assert reading.book.sources["S-1"].leak_test.result == "fail"  # type: ignore[union-attr]


def test_a_count_supersedes_the_day_a_source_was_last_seen(tiny_content: Content) -> None:
    rows = f"{ROW}\n{ROW.replace('01-08', '01-12').replace('yes', 'no')}\n"
    source = reading_of(tiny_content, f"{HEADER}\n{rows}").book.sources["S-1"]  # type: ignore[union-attr]
    assert source.last_seen == dt.date(2026, 1, 8)
    assert source.at("last_seen") == Spot(COUNTS, (2, "date"))


FAULTS = "date,thing,fault,by,cleared,cleared by"


@pytest.mark.parametrize(
    ("row", "supply", "source"),
    [
        ("2026-01-10,U-1,dial loose,T1,,", "faulty", "in use"),
        ("2026-01-10,U-1,dial loose,T1,2026-01-12,TEC1", "in use", "in use"),
        ("2026-01-10,S-1,grille bent,T1,,", "in use", "quarantined"),
    ],
)
def test_what_is_faulty_is_out_of_use_until_cleared(
    row: str, supply: str, source: str, tiny_content: Content
) -> None:
    book = reading_of(tiny_content, f"{FAULTS}\n{row}\n", "records/faults.csv").book
    assert book is not None
    assert (book.supplies["U-1"].status, book.sources["S-1"].status) == (supply, source)


def test_an_inspection_supersedes_the_list_of_supplies(tiny_content: Content) -> None:
    header = "date,unit,result,measured current,by"
    passed = reading_of(
        tiny_content, f"{header}\n2025-12-01,U-1,pass,1.8 mA,TEC1\n", "records/inspections.csv"
    )
    unit = passed.book.supplies["U-1"]  # type: ignore[union-attr]
    assert (unit.tested, str(unit.measured_current), unit.status) == (
        dt.date(2025, 12, 1),
        "1.8 mA",
        "in use",
    )
    failed = reading_of(
        tiny_content, f"{header}\n2025-12-01,U-1,fail,7.8 mA,TEC1\n", "records/inspections.csv"
    )
    assert failed.book.supplies["U-1"].status == "faulty"  # type: ignore[union-attr]


def test_a_table_without_end_is_read_up_to_its_cap_and_soon(tiny_content: Content) -> None:
    rows = "".join(f"2026-01-08,S-1,yes,store {number},whole,TEC1,\n" for number in range(MOST_ROWS + 5))
    began = time.process_time()
    finding = only(reading_of(tiny_content, f"{HEADER}\n{rows}"))
    assert time.process_time() - began < 10
    assert f"more than {MOST_ROWS} rows" in finding.message


def test_a_thousand_mistakes_are_not_all_told(tiny_content: Content) -> None:
    rows = "".join(f"{day}/01/2026,S-1,yes,x,y,TEC1,\n" for day in range(1000))
    assert len(reading_of(tiny_content, f"{HEADER}\n{rows}").findings) <= 52


CELLS = st.text(alphabet=" \n\t,;\"'=#-.:/x1é\u00a0\u202e\x00", max_size=160)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.binary(max_size=300) | CELLS.map(str.encode) | CELLS.map(lambda text: f"{HEADER}\n{text}".encode()))
def test_any_bytes_end_in_findings(tmp_path: Path, raw: bytes) -> None:
    reading = read(tiny.write(tmp_path, {"department/people.yml": PEOPLE, COUNTS: raw, WEEK: raw}))
    assert reading.book is not None
    for finding in reading.findings:
        if finding.place.file in reading.lines:
            assert finding.place.line <= len(reading.lines[finding.place.file])


@settings(max_examples=200, deadline=None)
@given(st.lists(st.text(alphabet='ab ,;"1é', max_size=8), min_size=3, max_size=3), st.sampled_from(",;\t"))
def test_the_place_of_a_cell_is_where_its_text_is(cells: list[str], mark: str) -> None:
    written = [f'"{cell.replace(chr(34), chr(34) * 2)}"' for cell in cells]
    grid = Grid(f"date{mark}by{mark}note\n{mark.join(written)}\n", "f.csv", ("date", "by", "note"))
    grid.take_apart()
    assert grid.findings == []
    line = grid.lines[1]
    for name, text in zip(grid.header, written, strict=True):
        if (2, name) in grid.values:
            start, end = grid.values[(2, name)]
            assert line[start.column : end.column] == text
