"""Properties that nothing can have are refused where they are written, before any formula meets them."""

import re
from pathlib import Path

import pytest

from checks.edits import BENCH, bench, judged
from clampstand.build import handbook
from clampstand.findings import Severity

FILES = bench()


@pytest.mark.parametrize(
    ("file", "was", "now", "says"),
    [
        ("department/rooms.yml", r"volume: [0-9.]+ m³", "volume: 0 m³", "volume is always more than nothing"),
        (
            "department/rooms.yml",
            r"volume: [0-9.]+ m³",
            "volume: -9 m³",
            "volume is always more than nothing",
        ),
        ("department/sources.yml", "activity: 185 kBq", "activity: 0 Bq", "activity is always more than"),
        ("department/sources.yml", "activity: 185 kBq", "activity: -5 kBq", "activity is always more than"),
        ("department/department.yml", "420 ppm", "-420 ppm", "no part of a whole"),
        ("department/department.yml", "420 ppm", "420 %", "no part of a whole"),
        ("department/department.yml", "groups_of: 3", "groups_of: 0", "nobody and nothing"),
        ("department/department.yml", "class_size: 30", "class_size: 0", "nobody and nothing"),
        ("practicals/source-bench.yml", "takes: 10 min", "takes: -10 min", "less than nothing"),
        (
            "practicals/source-bench.yml",
            "lesson: 30 min",
            "lesson: 30 min\ngroups_of: 0",
            "nobody and nothing",
        ),
        ("practicals/cold-bench.yml", r"amount: [0-9.]+ kg", "amount: -10 kg", "less than nothing"),
    ],
)
def test_it_is_a_stop_and_never_an_exception(
    tmp_path: Path, file: str, was: str, now: str, says: str
) -> None:
    judged(FILES, tmp_path)
    text, times = re.subn(was, now, (BENCH / file).read_text(encoding="utf-8"))
    assert times, f"{file} has no {was}"
    (tmp_path / file).write_text(text, encoding="utf-8")
    stops = [f.message for f in handbook(tmp_path).findings if f.severity is Severity.STOP]
    assert any(says in message for message in stops), stops
