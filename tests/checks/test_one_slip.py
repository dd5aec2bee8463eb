"""One slip is one finding, with every other place it shows at."""

from pathlib import Path

from checks.edits import bench, edited, judged, plain

BENCH = bench()


def _found(patch: str, folder: Path) -> list[tuple[str, str, int]]:
    findings = judged(edited(BENCH, plain(patch)), folder).findings
    return [(found.rule, found.message, len(found.related)) for found in findings]


def test_gloves_left_out_are_missed_once(tmp_path: Path) -> None:
    patch = """
    cold bench:
      kit: {10: {item: cold-pellets, per: class, amount: 0.01 kg}}
      run:
        2: {do: "Dress in {goggles}.", puts_on: {teacher: goggles}}
        6: {handles: [cold-snow, cold-pellets]}
        10: {do: "Undress, {goggles}.", takes_off: {teacher: goggles}}
    """
    found = [each for each in _found(patch, tmp_path) if each[0] == "protection-worn"]
    assert [(rule, related) for rule, _, related in found] == [("protection-worn", 1)]
    assert "step 3 handles cold-snow while the hands of the teacher" in found[0][1]


def test_a_lost_result_is_missed_once(tmp_path: Path) -> None:
    patch = """
    source bench:
      run:
        1: {measures: (left out)}
        6: {builds_on: background}
        7: {builds_on: [background, counts]}
    """
    found = [each for each in _found(patch, tmp_path) if each[0] == "unknown-id"]
    assert len(found) == 1
    assert found[0][1].endswith("is measured in no step here; 3 steps name it")
