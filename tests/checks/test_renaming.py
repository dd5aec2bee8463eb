"""Names mean nothing: with every item of kit renamed, every wrong edit is found as before, and no other."""

import re
from collections import Counter
from pathlib import Path

import pytest

from checks.edits import Files, Plain, edited, judged
from checks.written import ALL, BENCH, Case, found_in_wrong

ABOUT_NAMES = ("names-in-braces", "size-by-name", "substance-by-name")
"""Rules about the names themselves: their wrong edits name things by words the renaming takes away, or hold
what a name says against what is written beside it."""


def renamed(files: Files) -> Files:
    """The files with other ids and names for everything in the kit."""
    kit = files["kit/bench.yml"]
    new = {its_id: f"thing-{number}" for number, its_id in enumerate(kit, start=1)}
    result = {name: _renamed(data, new) for name, data in files.items()}
    for its_id, item in result["kit/bench.yml"].items():  # type: ignore[union-attr]
        item["name"], item["plural"] = f"{its_id} of no meaning", f"{its_id}s of no meaning"
    return result  # type: ignore[return-value]


def _renamed(data: Plain, new: dict[str, str]) -> Plain:
    if isinstance(data, dict):
        return {new.get(key, key): _renamed(value, new) for key, value in data.items()}
    if isinstance(data, list):
        return [_renamed(element, new) for element in data]
    return new.get(data) or re.sub(r"\{([\w-]+)\}", lambda m: f"{{{new.get(m[1], m[1])}}}", data)


def test_the_renamed_bench_is_clean(tmp_path: Path) -> None:
    assert judged(renamed(BENCH), tmp_path).findings == ()


@pytest.mark.parametrize("case", [case for case in ALL if case.rule not in ABOUT_NAMES], ids=str)
def test_renaming_changes_no_verdict(case: Case, tmp_path: Path) -> None:
    before = found_in_wrong(case)
    after = judged(renamed(edited(BENCH, case.wrong)), tmp_path).findings
    assert Counter((f.rule, f.severity) for f in after) == Counter((f.rule, f.severity) for f in before)
