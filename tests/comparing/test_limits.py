"""Which verdicts flip when other packs or other values are tried, and nothing besides."""

from pathlib import Path

import pytest

from checks.edits import Files, Plain, bench, edited, judged
from clampstand.cli import main
from clampstand.comparing.limits import (
    DEPARTMENT,
    NoSuchPack,
    flips,
    flips_as_text,
    with_limits_of,
    with_packs,
)
from clampstand.model.book import Book
from demo import demo

BENCH: Files = bench()


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return judged(BENCH, tmp_path_factory.mktemp("before")).book


def changed(limits: dict[str, Plain], folder: Path) -> Book:
    return judged(edited(BENCH, {"limits": limits}), folder).book


def test_nothing_flips_where_nothing_changes(before: Book) -> None:
    assert flips(before, before) == {}
    assert flips_as_text({}) == "0 stops would come, 0 would go, 0 limits would change"


def test_a_stricter_value_lists_the_practicals_it_stops(before: Book, tmp_path: Path) -> None:
    stricter = changed({"house/radiation.watchers-to-source": {"at_least": "3 m"}}, tmp_path)
    found = flips(before, with_limits_of(before, stricter))
    assert list(found) == ["practicals/source-bench"]
    one = found["practicals/source-bench"]
    assert {verdict.rule for verdict in one.new} >= {"watchers-distance"}
    assert one.gone == ()
    words = "radiation.watchers-to-source: at least 2 m (local rule) → at least 3 m (local rule)"
    assert [str(limit) for limit in one.limits] == [words]
    back = flips(stricter, with_limits_of(stricter, before))
    assert {v.problem.message for v in back["practicals/source-bench"].gone} == {
        v.problem.message for v in one.new
    }


def test_a_value_written_in_another_unit_flips_nothing_and_changes_words_only(
    before: Book, tmp_path: Path
) -> None:
    same = changed({"house/radiation.watchers-to-source": {"at_least": "200 cm"}}, tmp_path)
    assert flips(before, with_limits_of(before, same)) == {}


def test_another_country_s_packs_name_the_practicals_that_use_its_sources() -> None:
    book = demo().book
    packs = [pack for pack in book.department.packs if pack != "GB"]
    found = flips(book, with_packs(book, [*packs, "US"]))
    spark = found["practicals/spark-counter"]
    named = {source for slot in book.practicals["spark-counter"].sources for source in slot.one_of}
    assert {verdict.subject for verdict in spark.new} == {f"sources/{source}" for source in named}
    assert "leak-test-interval" in {verdict.rule for verdict in spark.new}
    assert any("S-R1" in verdict.problem.message for verdict in found[DEPARTMENT].new)
    text = flips_as_text(found)
    assert "radiation.leak-test-interval: no longer than 24 months" in text
    assert "no longer than 6 months (law)" in text


def test_a_pack_may_be_named_in_any_case() -> None:
    book = demo().book
    assert with_packs(book, ["gb", "Department-Rules"]).department.packs == ("GB", "department-rules")


def test_a_pack_misspelt_is_asked_about() -> None:
    with pytest.raises(NoSuchPack, match="did you mean department-rules"):
        with_packs(demo().book, ["departmnt-rules"])


def test_an_unknown_pack_is_said() -> None:
    book = demo().book
    with pytest.raises(NoSuchPack, match="there is no pack moon"):
        with_packs(book, ["moon"])


@pytest.mark.parametrize(
    ("packs", "code"), [("land,house", 0), ("house, land", 0), ("house", 1), ("house,moon", 2)]
)
def test_the_command_says_by_its_exit_code_whether_stops_come(packs: str, code: int) -> None:
    content = str(Path(__file__).parents[1] / "checks/bench")
    assert main(["try-limits", "--content", content, "--packs", packs]) == code


def test_content_that_cannot_be_read_cannot_be_compared(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["try-limits", "--content", str(tmp_path)]) == 2
    assert "cannot be read" in capsys.readouterr().err
