"""What one broken or unknown name makes unknowable is not told a second time by other rules."""

from pathlib import Path

from checks.edits import bench, edited, judged, plain


def rules_found(patch: str, folder: Path) -> set[str]:
    return {finding.rule for finding in judged(edited(bench(), plain(patch)), folder).findings}


def test_a_source_that_is_not_on_the_register_is_told_once(tmp_path: Path) -> None:
    promised = "expect: {1: {compute: activity-today, given: {source: source}}}"
    patch = f"{{source bench: {{sources: {{1: {{one_of: N-99}}}}, {promised}}}}}"
    assert rules_found(patch, tmp_path) == {"unknown-id"}


def test_a_source_that_is_not_whole_is_told_once(tmp_path: Path) -> None:
    patch = "{sources: {N-1: {reference_date: (left out)}}}"
    assert rules_found(patch, tmp_path) == {"schema"}


def test_with_everything_described_the_same_rule_speaks(tmp_path: Path) -> None:
    patch = "{source bench: {expect: {1: {compute: activity-toda, given: {source: source}}}}}"
    assert "expectation-computable" in rules_found(patch, tmp_path)


def test_a_slip_out_of_its_own_range_is_told_once(tmp_path: Path) -> None:
    bound = "limits: {bench.most.length: {at_most: 10 m}}"
    slip = "numbers: {gap: {value: 3 km, may_be: 2 mm to 5 mm, because: common practice}}"
    assert rules_found(f"{{{bound}, high tension bench: {{{slip}}}}}", tmp_path) == {"in-its-range"}
    bare = "numbers: {gap: {value: 3 km, because: common practice}}"
    assert rules_found(f"{{{bound}, high tension bench: {{{bare}}}}}", tmp_path) == {"bench-sizes"}
