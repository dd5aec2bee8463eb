"""The bench, which every example and case edits, is clean."""

from pathlib import Path

import pytest

from checks.edits import LEFT_OUT, bench, edited, judged, merged, plain


def test_the_bench_is_clean(tmp_path: Path) -> None:
    assert [finding.message for finding in judged(bench(), tmp_path).findings] == []


def test_a_patch_changes_only_what_it_names() -> None:
    files = bench()
    changed = edited(files, plain("source bench: {numbers: {hand distance: {value: 0.2 m}}}"))
    assert changed["practicals/source-bench.yml"]["numbers"]["hand distance"] == {  # type: ignore[index, call-overload]
        "value": "0.2 m",
        "obeys": "radiation.hand-to-source",
    }
    assert files == bench()
    assert [name for name in files if files[name] != changed[name]] == ["practicals/source-bench.yml"]


@pytest.mark.parametrize(
    ("change", "result"),
    [
        ({"2": "x"}, ["a", "x", "c"]),
        ({"2": LEFT_OUT}, ["a", "c"]),
        ({"4": "d"}, ["a", "b", "c", "d"]),
        ({"4": "d", "order": "4 1 2 3"}, ["d", "a", "b", "c"]),
        ({"2": LEFT_OUT, "order": "3 1"}, ["c", "a"]),
    ],
)
def test_a_list_is_patched_by_numbers(change: dict[str, str], result: list[str]) -> None:
    assert merged(["a", "b", "c"], dict(change)) == result


@pytest.mark.parametrize("change", [{"5": "x"}, {"order": "1 2"}])
def test_a_patch_that_fits_nowhere_is_an_error(change: dict[str, str]) -> None:
    with pytest.raises(AssertionError):
        merged(["a", "b", "c"], dict(change))


def test_only_the_limit_of_the_circumstances_is_patched() -> None:
    changed = edited(bench(), plain("limits: {electrical.touch-voltage (ac): {at_most: 20 V}}"))
    values = [
        limit["at_most"]  # type: ignore[index, call-overload]
        for limit in changed["limits/land.yml"]["limits"]
        if limit["key"] == "electrical.touch-voltage"  # type: ignore[index, call-overload]
    ]
    assert values == ["60 V", "20 V"]
