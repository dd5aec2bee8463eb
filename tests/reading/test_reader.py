"""A folder becomes a book in which every definition knows its id and its place."""

import time
from collections.abc import Callable
from pathlib import Path

import pytest

import tiny
from clampstand.findings import Finding, Spot
from clampstand.model.step import Step
from clampstand.reading import Reading, read


def book_of(reading: Reading):  # type: ignore[no-untyped-def]
    assert reading.book is not None
    return reading.book


def test_the_tiny_handbook_is_whole(tiny_content: Callable[..., Path]) -> None:
    reading = read(tiny_content())
    assert reading.findings == ()
    assert reading.broken == frozenset()
    assert reading.files == tuple(sorted(tiny.TINY))
    assert set(book_of(reading).kit) == {"supply", "forceps", "plates", "fire-blanket"}


def test_definitions_know_where_they_stand(tiny_content: Callable[..., Path]) -> None:
    reading = read(tiny_content())
    book, places = book_of(reading), reading.places
    forceps, sparks = book.kit["forceps"], book.practicals["sparks"]
    assert (forceps.id, forceps.spot) == ("forceps", Spot("kit/all.yml", ("forceps",)))
    assert places.of(forceps.at("length")).line == 4
    assert places.of(forceps.at("length")).column == 34
    assert places.of(sparks.at("run", 1, "by", 0)) == places.of(sparks.at("run", 1, "by"))
    assert places.of(sparks.at("run", 1, "by").key()).column == 5
    assert places.of(sparks.at("defer")).line == 1
    assert book.department.spot == Spot("department/department.yml")
    assert places.of(book.department.at("class_size")).line == 4


def test_limits_are_numbered_within_their_pack(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY["limits/house.yml"]
    again = text.split("limits:\n")[1]
    pack = book_of(read(tiny_content({"limits/house.yml": text + again}))).packs["house"]
    assert [limit.id for limit in pack.limits] == [
        "house/radiation.hand-to-source",
        "house/radiation.hand-to-source/2",
    ]
    assert pack.limits[1].spot == Spot("limits/house.yml", ("limits", 1))


def test_one_pack_in_two_files(tiny_content: Callable[..., Path]) -> None:
    (finding,) = read(tiny_content({"limits/other.yml": tiny.TINY["limits/house.yml"]})).findings
    assert (finding.place.file, finding.place.line, finding.place.column) == ("limits/other.yml", 1, 7)
    assert finding.message == "house is written in limits/house.yml already, in line 1"
    assert finding.related[0][0].file == "limits/house.yml"


def test_no_department_no_book(tiny_content: Callable[..., Path]) -> None:
    reading = read(tiny_content({"department/department.yml": None, "kit/more.yml": "a: {nme: x}"}))
    assert reading.book is None
    assert [(f.place.file, f.rule) for f in reading.findings] == [
        ("department/department.yml", "reading"),
        ("kit/more.yml", "schema"),
    ]


def test_a_broken_department_is_no_book_either(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY["department/department.yml"].replace("class_size: 24", "class_size: many")
    reading = read(tiny_content({"department/department.yml": text}))
    assert reading.book is None
    (finding,) = reading.findings
    assert (finding.place.line, finding.place.column) == (4, 13)


def test_no_folder(tmp_path: Path) -> None:
    with pytest.raises(NotADirectoryError):
        read(tmp_path / "nowhere")


def test_a_broken_definition_stays_out_and_its_neighbours_stay_in(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY["kit/all.yml"].replace("{name: plates}", "{name: plates, fragile: perhaps}")
    reading = read(tiny_content({"kit/all.yml": text}))
    assert "plates" not in book_of(reading).kit
    assert "forceps" in book_of(reading).kit
    assert reading.broken == {("kit", "plates")}
    assert [f.subject for f in reading.findings] == ["kit/plates"]


def test_a_duplicate_key_breaks_only_its_own_entry(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY["kit/all.yml"].replace("{name: plates}", "{name: plates, name: dishes}")
    reading = read(tiny_content({"kit/all.yml": text}))
    assert reading.broken == {("kit", "plates")}


def test_every_mistake_of_a_file_is_told_in_one_run(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY["practicals/sparks.yml"]
    for old, new in [
        ("led_by: teacher", "led_by: techer"),
        ("lesson: 10 min", "leson: 10"),
        ("run:\n  - do: Set", "rnu:\n  - doo: Set"),
        ("holds_with: forceps", "holds: forceps"),
        ("topics: [high voltage]", "topics: high voltage"),
        ("due: 2026-09-01", "due: 2026-13-01"),
    ]:
        assert old in text
        text = text.replace(old, new)
    told = [
        (f.place.line, f.place.column) for f in read(tiny_content({"practicals/sparks.yml": text})).findings
    ]
    assert told == [(4, 9), (6, 9), (9, 1), (9, 8), (21, 1), (22, 5), (30, 5), (33, 88)]


def test_the_order_of_folders_on_the_disk_changes_nothing(tiny_content: Callable[..., Path]) -> None:
    changes = {f"kit/{name}.yml": f"{name}: {{nme: x}}\nok-{name}: {{name: x}}" for name in "zmab"}
    first = read(tiny_content(changes))
    second = read(tiny_content(dict(reversed(changes.items()))))
    assert first.findings == second.findings
    assert list(book_of(first).kit) == list(book_of(second).kit)
    places = [finding.place for finding in first.findings]
    assert places == sorted(places)


def test_a_text_keeps_its_hash_in_quotes_and_its_note_outside(tiny_content: Callable[..., Path]) -> None:
    more = 'a:\n  name: "tray #2"   # by the window\n  note: >-\n    Rinse\n    twice #3\n'
    reading = read(tiny_content({"kit/more.yml": more}))
    assert reading.findings == ()
    assert book_of(reading).kit["a"].name == "tray #2"
    assert book_of(reading).kit["a"].note == "Rinse twice #3"


def test_notes_of_any_language_stay_as_they_are(tiny_content: Callable[..., Path]) -> None:
    reading = read(
        tiny_content({"kit/more.yml": "a: {name: Δίσκος 🧪 – 100 %, also: [no, 12:30, 010, 1e3, ~]}\n"})
    )
    assert reading.findings == ()
    assert book_of(reading).kit["a"].name == "Δίσκος 🧪 – 100 %"
    assert book_of(reading).kit["a"].also == ("no", "12:30", "010", "1e3", "~")


def test_columns_count_characters(tiny_content: Callable[..., Path]) -> None:
    (finding,) = read(tiny_content({"kit/more.yml": "a: {name: 🧪é, fragile: perhaps}\n"})).findings
    assert (finding.place.column, finding.place.width) == (24, 7)


def test_helpers_make_what_they_say() -> None:
    assert isinstance(tiny.step(takes_out="source"), Step)
    assert tiny.step(takes_out="source").takes_out == ("source",)
    assert tiny.practical("x", kit=[{"item": "a", "per": "class"}]).items == {"a"}


def test_two_hundred_practicals_are_read_at_the_pace_of_a_thousand(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY["practicals/sparks.yml"]
    step = text.split("run:\n")[1].split("emergency:")[0]
    long = text.replace("run:\n", "run:\n" + step * 17)
    content = tiny_content({f"practicals/p{number}.yml": long for number in range(200)})
    start = time.process_time()
    findings: tuple[Finding, ...] = read(content).findings
    each = (time.process_time() - start) / 200
    assert findings == ()
    assert each < 0.02, f"{1000 * each:.1f} ms for {long.count(chr(10))} lines"
