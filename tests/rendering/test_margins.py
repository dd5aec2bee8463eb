"""How far off still works is printed for the numbers that steps quote, on the page and the prep sheet."""

import html
import re
from pathlib import Path

import pytest

from checks.edits import bench, edited, judged, plain
from clampstand.build import sheets
from clampstand.checks import RULES
from clampstand.rendering.contents import Contents
from clampstand.rendering.site import pages

PATCH = """\
high tension bench:
  numbers:
    gap: {value: 3 mm, may_be: 2 mm to 5 mm, because: wider it needs more voltage}
    spare gap: {value: 4 mm, may_be: 2 mm to 5 mm, because: no step quotes it}
    sagging: {value: 6 mm, may_be: 4 mm to 9 mm, because: the plates of this maker}
  prepare:
    1: {do: "Look at the {high-supply}; the plates sag by {sagging}."}
  run:
    1: {do: "Set a gap of {gap} between the {field-plates}."}
"""


@pytest.fixture(scope="module")
def words(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The words of every page, by its address."""
    folder: Path = tmp_path_factory.mktemp("bench")
    read = judged(edited(bench(), plain(PATCH)), folder)
    assert [finding.rule for finding in read.findings] == []
    made = pages(Contents(read.book, sheets(read.lessons), read.findings, RULES))
    return {
        page.uri: " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page.html)).split()).replace("\u00a0", " ")
        for page in made
    }


def test_the_teacher_reads_what_the_lesson_quotes(words: dict[str, str]) -> None:
    page = words["practicals/high-tension-bench.html"]
    assert "gap 3 mm: wider it needs more voltage. 2 mm to 5 mm will do." in page
    assert "4 mm to 9 mm" not in page
    assert "spare gap" not in page


def test_the_technician_reads_what_preparing_quotes(words: dict[str, str]) -> None:
    page = words["prep/high-tension-bench.html"]
    assert "sagging 6 mm: the plates of this maker. 4 mm to 9 mm will do." in page
    assert "2 mm to 5 mm" not in page


def test_where_no_step_quotes_a_range_no_heading_stands(words: dict[str, str]) -> None:
    assert "How far off" in words["prep/high-tension-bench.html"]
    assert "How far off" not in words["prep/source-bench.html"]
