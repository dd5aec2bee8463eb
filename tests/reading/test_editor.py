"""The schemas for editors: current, kind, and held to good and bad files by an independent validator."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from clampstand.cli import main
from clampstand.model.base import Definition
from clampstand.reading.editor import KNOWN_IDS, kinds_of_file, schema_name
from demo import demo

ROOT = Path(__file__).parents[2]
CONTENT = ROOT / "content"
SCHEMAS = CONTENT / ".schemas"

BAD: dict[str, dict[str, str]] = {
    "practicals": {
        "unknown-key": "takes: 3 min",
        "no-list": "kit: 3",
        "unit": "lesson: 60",
        "ages": "ages: 14-18",
        "word": "subject: fysics",
        "step": "run: [{do: Wait., by: teacher, takes: 3}]",
        "actor": "run: [{do: Wait., by: head, takes: 3 min}]",
        "count": "kit: [{item: balloon, per: class, count: three}]",
        "yes": "kit: [{item: balloon, per: class, made_here: true}]",
        "null": "brief:",
        "phase": "where: {lunch: R1}",
        "id": "see_also: [two words]",
        "supply": "run: [{do: Wait., by: teacher, takes: 3 min, switches_on: {two words: x}}]",
        "date": "review: {version: 1, last: 15/01/2026, written_by: a, approved_by: b, due: 2027-01-15}",
    },
    "kit": {
        "key": "gm-tube: {name: tube, colour: red}",
        "id": "gm tube: {name: tube}",
        "interval": "gm-tube: {name: tube, lead: soon}",
        "no-name": "gm-tube: {fragile: yes}",
    },
    "limits": {
        "no-citation": "pack: x\ntitle: x\nlimits: [{key: a, title: b, layer: law, at_most: 3 m}]",
        "layer": "pack: x\ntitle: x\nlimits: [{key: a, title: b, layer: custom, at_most: 3 m, citation: c, "
        "read_on: 2026-01-01, check_again_by: 2027-01-01}]",
    },
    "department-rooms": {
        "level": "cellar: {name: cellar, level: downstairs}",
        "volume": "cellar: {name: cellar, level: below ground, volume: 60}",
    },
    "department-people": {"name": "Jo: {role: teacher}"},
    "reference-nuclides": {"rows": "X-1: {emissions: {alpha: {citation: c, rows: [[1, 2, 3]]}}}"},
}


def examined(schema: str, files: list[Path]) -> dict[str, list[str]]:
    """What check-jsonschema, which reads YAML 1.2, says against each file."""
    command = [
        "-m",
        "check_jsonschema",
        "-o",
        "json",
        "--schemafile",
        str(SCHEMAS / schema),
        *map(str, files),
    ]
    run = subprocess.run([sys.executable, *command], capture_output=True, text=True, check=False)
    report = json.loads(run.stdout)
    assert not report.get("parse_errors"), report
    found: dict[str, list[str]] = {}
    for error in report.get("errors", []):
        found.setdefault(Path(error["filename"]).name, []).append(f"{error['path']}: {error['message']}")
    return found


def test_the_schemas_are_those_of_today(tmp_path: Path) -> None:
    assert main(["schema", str(tmp_path), "--content", str(CONTENT)]) == 0
    made = {path.name: path.read_text() for path in tmp_path.iterdir()}
    kept = {path.name: path.read_text() for path in SCHEMAS.iterdir()}
    assert set(made) == set(kept)
    for name, text in made.items():
        assert kept[name] == text, f"{name} is not of today: run clampstand schema content/.schemas"


@pytest.mark.parametrize("files", [files for files, _, _ in kinds_of_file()])
def test_every_good_file_passes(files: str) -> None:
    there = sorted(CONTENT.glob(files))
    if there:
        assert examined(schema_name(files), there) == {}


@pytest.mark.parametrize("schema", BAD)
def test_every_bad_sample_fails(schema: str, tmp_path: Path) -> None:
    for name, text in BAD[schema].items():
        (tmp_path / f"{name}.yml").write_text(text + "\n")
    if schema == "practicals":  # only what is wrong is missing from these, so that the wrong is what is told
        good = (CONTENT / "practicals/spark-counter.yml").read_text()
        for path in tmp_path.iterdir():
            key = path.read_text().partition(":")[0]
            kept = "".join(part for part in _top_parts(good) if not part.startswith(f"{key}:"))
            path.write_text(kept + path.read_text())
    found = examined(f"{schema}.schema.json", sorted(tmp_path.iterdir()))
    assert sorted(found) == sorted(path.name for path in tmp_path.iterdir())


def _top_parts(text: str) -> list[str]:
    """The text of every key of a file with what belongs to it."""
    parts: list[str] = []
    for line in text.splitlines(keepends=True):
        if not parts or line[0] not in " \n":
            parts.append("")
        parts[-1] += line
    return parts


def test_ids_are_offered_and_a_new_one_is_taken(tmp_path: Path) -> None:
    known = json.loads((SCHEMAS / KNOWN_IDS).read_text())["$defs"]
    book = demo().book
    assert known["kit"]["enum"] == sorted(book.kit)
    assert "hand-to-source-distance" in known["rules"]["enum"]
    fields = json.loads((SCHEMAS / "practicals.schema.json").read_text())["$defs"]["KitLine"]["properties"]
    assert fields["item"]["anyOf"][0] == {"$ref": f"{KNOWN_IDS}#/$defs/kit"}
    (tmp_path / "new.yml").write_text("brass-rod: {name: brass rod, hazards: [not-written-yet]}\n")
    assert examined("kit.schema.json", [tmp_path / "new.yml"]) == {}


def test_the_words_under_a_field_explain_it() -> None:
    step = json.loads((SCHEMAS / "practicals.schema.json").read_text())["$defs"]["Step"]["properties"]
    assert step["opens"]["description"].startswith("Bottles and valves opened")
    assert step["takes"]["patternErrorMessage"] == "write a time with its unit, for example 10 min"


def test_no_two_definitions_have_one_name() -> None:
    waiting, names = [Definition], []
    while waiting:
        kind = waiting.pop()
        waiting += kind.__subclasses__()
        names.append(kind.__name__)
    assert len(names) == len(set(names))


def test_the_workspace_maps_every_kind_of_file() -> None:
    settings = json.loads((ROOT / ".vscode/settings.json").read_text())["yaml.schemas"]
    assert settings == {
        f"./content/.schemas/{schema_name(files)}": f"/content/{files}" for files, _, _ in kinds_of_file()
    }


def test_the_reader_passes_the_schemas_by() -> None:
    assert not any(".schemas" in file for file in demo().reading.files)
