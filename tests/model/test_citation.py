"""What a citation holds is said by the names of the kinds of quantity, and by four words more."""

from pathlib import Path

import pytest

from checks.edits import bench, edited, judged, plain


@pytest.mark.parametrize("holds", ["length", "[time, energy]", "[observation, count, age, interval]"])
def test_kinds_of_figure_are_taken(holds: str, tmp_path: Path) -> None:
    patch = plain(f"citations: {{figures: {{holds: {holds}}}}}")
    assert judged(edited(bench(), patch), tmp_path).findings == ()


@pytest.mark.parametrize("holds", ["lenght", "[time, half-lives]", "Length"])
def test_other_words_are_refused(holds: str, tmp_path: Path) -> None:
    found = judged(edited(bench(), plain(f"citations: {{figures: {{holds: {holds}}}}}")), tmp_path).findings
    assert [finding.place.file for finding in found] == ["citations/bench.yml"]
    assert "is no kind of figure" in found[0].message
