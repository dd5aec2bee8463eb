"""What differs in meaning is said once, with ratio and direction; nothing is said where nothing changed."""

from pathlib import Path

import pytest

from checks.edits import Files, Plain, bench, edited, judged, plain
from clampstand.build import handbook
from clampstand.cli import main
from clampstand.comparing.meaning import Change, changes, changes_as_text
from clampstand.model.book import Book
from demo import CONTENT, demo

BENCH: Files = bench()


@pytest.fixture(scope="module")
def before(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return judged(BENCH, tmp_path_factory.mktemp("before")).book


def told(before: Book, patch: str | dict[str, Plain], folder: Path) -> list[str]:
    after = judged(edited(BENCH, plain(patch) if isinstance(patch, str) else patch), folder).book
    return [f"{change.subject} | {change}" for change in changes(before, after)]


def test_nothing_is_said_of_what_is_the_same(before: Book) -> None:
    assert changes(before, before) == ()
    assert changes(demo().book, handbook(CONTENT).book) == ()


@pytest.mark.parametrize(
    "patch",
    [
        "sources: {N-1: {activity: 5 µCi, leak_test: {every: 2 years}}}",
        "department: {lesson: 1 h, outdoor_carbon_dioxide: 0.042 %}",
        "limits: {house/radiation.watchers-to-source: {at_least: 200 cm}}",
    ],
)
def test_other_units_of_the_same_size_say_nothing(patch: str, before: Book, tmp_path: Path) -> None:
    assert told(before, patch, tmp_path) == []


@pytest.mark.parametrize(
    ("patch", "says"),
    [
        (
            "limits: {house/radiation.watchers-to-source: {at_least: 1 m}}",
            "packs/house | limits › radiation.watchers-to-source › at least: 2 m → 1 m (×0.500) LOOSENED",
        ),
        (
            "limits: {house/electrical.voltage: {at_most: 4 kV}}",
            "packs/house | limits › electrical.voltage › at most: 5 kV → 4 kV (×0.800) tightened",
        ),
        (
            "sources: {N-1: {leak_test: {every: 25 months}}}",
            "sources/N-1 | leak test › every: 24 months → 25 months LOOSENED",
        ),
        ("sources: {N-1: {activity: 18.5 kBq}}", "sources/N-1 | activity: 185 kBq → 18.5 kBq (×0.100)"),
        (
            "limits: {house/electrical.voltage: (left out)}",
            "packs/house | limits: taken out electrical.voltage LOOSENED",
        ),
        ("kit: {high-supply: {hazards: []}}", "kit/high-supply | hazards: taken out high-voltage LOOSENED"),
        ("rooms: {loft: {like: yard}}", "rooms/loft | new"),
        (
            "limits: {house/radiation.sources-out: {waivable: no}}",
            "packs/house | limits › radiation.sources-out › waivable: yes → no tightened",
        ),
    ],
)
def test_a_change_is_said_with_its_ratio_and_direction(
    patch: str, says: str, before: Book, tmp_path: Path
) -> None:
    assert told(before, patch, tmp_path) == [says]


def test_a_declared_number_is_looser_by_the_limit_it_obeys(before: Book, tmp_path: Path) -> None:
    practical = before.practicals["source-bench"]
    name, number = next(
        (n, x) for n, x in practical.numbers.items() if x.obeys == "radiation.watchers-to-source"
    )
    said = told(before, {"source bench": {"numbers": {name: {"value": "50 cm"}}}}, tmp_path)
    size = float(number.value.value.m_as("m"))
    (line,) = (line for line in said if f"numbers › {name}" in line)
    assert line.endswith(f"{number.value} → 50 cm (×{0.5 / size:.3f}) LOOSENED")


def test_a_step_that_moves_is_one_change(before: Book, tmp_path: Path) -> None:
    run = before.practicals["source-bench"].run
    order = " ".join(str(n) for n in [*range(2, len(run) + 1), 1])
    said = told(before, {"source bench": {"run": {"order": order}}}, tmp_path)
    assert said == [
        f"practicals/source-bench | run: step 1 moved after step {len(run) - 1}: {run[0].do} REORDERED"
    ]


def test_a_step_that_guarded_somebody_is_missed(before: Book, tmp_path: Path) -> None:
    run = before.practicals["cold-bench"].steps("run")
    number = next(n for n, step in enumerate(run, start=1) if step.puts_on)
    said = told(before, {"cold bench": {"run": {str(number): "(left out)"}}}, tmp_path)
    assert f"practicals/cold-bench | run: taken out {run[number - 1].do} LOOSENED" in said


def test_kit_is_told_by_its_total_for_the_class(before: Book, tmp_path: Path) -> None:
    said = told(before, "department: {class_size: 15}", tmp_path)
    per_group = {
        f"practicals/{p.id} | kit › {line.item}: "
        f"{10 * line.count + line.spare} → {5 * line.count + line.spare} for the class"
        for p in before.practicals.values()
        for line in p.kit
        if line.per == "group" and line.amount is None
    }
    assert per_group
    assert per_group <= set(said)


def test_what_is_looser_comes_first_and_is_counted(before: Book, tmp_path: Path) -> None:
    patch = plain("{limits: {house/electrical.voltage: {at_most: 6 kV}}, kit: {high-supply: {name: supply}}}")
    after = judged(edited(BENCH, patch), tmp_path).book
    text = changes_as_text(changes(before, after))
    assert text.index("LOOSENED") < text.index("kit/high-supply")
    assert text.endswith("2 changes of meaning: 1 loosens")


def test_a_step_in_another_place_is_marked_and_counted() -> None:
    one = Change("practicals/x", "run", "step 2 moved after step 3: Look.", reordered=True)
    assert changes_as_text([one]).split("\n") == [
        "practicals/x",
        "  run: step 2 moved after step 3: Look. REORDERED",
        "",
        "1 change of meaning: none loosens, 1 of order",
    ]


def test_the_command_says_by_its_exit_code_whether_anything_is_looser(tmp_path: Path) -> None:
    now = str(Path(__file__).parents[1] / "checks/bench")
    for name, (patch, code) in enumerate(
        [({}, 0), ({"limits": {"house/electrical.voltage": {"at_most": "4 kV"}}}, 1)]
    ):
        folder = tmp_path / str(name)
        assert not judged(edited(BENCH, patch), folder).reading.broken
        assert main(["changes", str(folder), "--content", now]) == code
    assert main(["changes", str(tmp_path / "nowhere"), "--content", now]) == 2
