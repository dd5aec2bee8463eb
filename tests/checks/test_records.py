"""What is found in a record is told at its cell, and of the source or supply it is about."""

from pathlib import Path

import pytest

from checks.edits import bench, edited, judged, plain

COUNTED = "{date: 2025-12-14, source: N-1, seen: yes, position: 'store, place 1', by: TEC1}"
TESTED = "{date: 2025-01-14, unit: T-1, result: pass, by: TEC1}"
WIPED = "{date: 2026-01-12, source: N-2, result: fail, could see: 9 Bq, instrument: scaler, by: TEC1}"


@pytest.mark.parametrize(
    ("patch", "rule", "subject", "column"),
    [
        (
            f"sources: {{N-1: {{last_seen: 2025-12-01}}}}\nsource-counts: {{1: {COUNTED}}}",
            "counted-monthly",
            "sources/N-1",
            1,
        ),
        (
            f"supplies: {{T-1: {{tested: 2024-12-01}}}}\ninspections: {{1: {TESTED}}}",
            "supply-tested",
            "supplies/T-1",
            1,
        ),
        (f"leak-tests: {{1: {WIPED}}}", "leak-test-due", "sources/N-2", 16),
    ],
)
def test_a_finding_in_a_record_is_about_its_thing(
    patch: str, rule: str, subject: str, column: int, tmp_path: Path
) -> None:
    (found,) = judged(edited(bench(), plain(patch)), tmp_path).findings
    assert (found.rule, found.subject) == (rule, subject)
    assert (found.place.file.split("/")[0], found.place.line, found.place.column) == ("records", 2, column)


def test_a_lesson_is_told_at_its_cell(tmp_path: Path) -> None:
    (found,) = judged(edited(bench(), plain("timetable: {2: {teacher: T3}}")), tmp_path).findings
    line = (tmp_path / found.place.file).read_text().splitlines()[found.place.line - 1]
    assert line[found.place.column - 1 :].startswith("T3")


def test_only_lessons_to_come_are_judged(tmp_path: Path) -> None:
    patch = plain("department: {computed_for: 2026-01-16}\ntimetable: {2: {teacher: T3}}")
    assert [found.message for found in judged(edited(bench(), patch), tmp_path).findings] == []
