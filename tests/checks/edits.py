"""Edits the bench, a small clean handbook, by patches, and judges what comes of it.

A patch is YAML. Its top keys name what is edited: ``source bench`` a practical; ``sources``, ``supplies``,
``rooms``, ``contacts``, ``kit``, ``hazards``, ``citations``, ``emergencies``, ``skills`` entries by id;
``department`` its own file; ``people`` codes; ``timetable`` and the records (``sign-offs``) rows of a table,
numbered from 1; ``limits`` limits by key, in whatever pack, ``electrical.current (dc)`` only
those that apply to dc. Below, blocks are merged; a list is patched by a block of numbers from 1, the next
number adds an element, and ``order: 1 3 2`` puts it in another order; ``(left out)`` takes a key or element
away; anything else replaces. A new entry or row may begin as a copy: ``like: N-1``.
"""

import copy
import csv
import io
from pathlib import Path
from typing import TypeAlias

import yaml

from clampstand.build import Handbook, handbook

Plain: TypeAlias = "str | list[Plain] | dict[str, Plain]"
Files: TypeAlias = dict[str, dict[str, Plain]]

BENCH = Path(__file__).parent / "bench"
LEFT_OUT = "(left out)"
ONE_FILE = {
    **{
        shelf: f"department/{shelf}.yml"
        for shelf in ("department", "contacts", "people", "rooms", "sources", "supplies")
    },
    **{shelf: f"{shelf}/bench.yml" for shelf in ("kit", "hazards", "citations")},
    **{shelf: f"reference/{shelf}.yml" for shelf in ("substances", "nuclides")},
}
TABLES = {
    "timetable": "timetable/bench.csv",
    **{
        name: f"records/{name}.csv"
        for name in (
            "leak-tests",
            "source-counts",
            "inspections",
            "sign-offs",
            "use-log",
            "faults",
            "near-misses",
            "limits-read-twice",
            "certificates-read-twice",
            "rooms-measured-twice",
            "plates-read-twice",
        )
    },
}
ROWS = "rows"
"""The one key of a table among the files."""
NEW_LIMIT: dict[str, Plain] = {
    "title": "A limit of the patch",
    "layer": "local rule",
    "citation": "house-rules",
    "read_on": "2025-09-01",
    "check_again_by": "2026-09-01",
}


def plain(text: str) -> dict[str, Plain]:
    """YAML as texts, lists and blocks."""
    data = yaml.load(text, yaml.CBaseLoader)
    assert isinstance(data, dict), f"not a block of keys: {text}"
    return data


def bench() -> Files:
    """The files of the bench, by their names from its folder on."""
    files = {str(path.relative_to(BENCH)): plain(path.read_text()) for path in sorted(BENCH.rglob("*.yml"))}
    for path in sorted(BENCH.rglob("*.csv")):
        rows: list[Plain] = [dict(row) for row in csv.DictReader(path.open())]
        files[str(path.relative_to(BENCH))] = {ROWS: rows}
    return files


def edited(files: Files, patch: dict[str, Plain]) -> Files:
    """The files with a patch applied."""
    files = copy.deepcopy(files)
    for name, change in copy.deepcopy(patch).items():
        if name in ("limits", "emergencies", "skills"):
            assert isinstance(change, dict), f"{name} are patched by id"
        if name == "limits":
            for key, of_limit in change.items():
                _edit_limits(files, key, of_limit)
        elif name in ("emergencies", "skills"):
            for its_id, of_entry in change.items():
                _edit_file(files, f"{name}/{its_id}.yml", of_entry)
        elif name in TABLES:
            table = files.setdefault(TABLES[name], {ROWS: []})
            table[ROWS] = merged(table[ROWS], change)
        elif name in ONE_FILE:
            _edit_file(files, ONE_FILE[name], change)
        else:
            _edit_file(files, _practical_file(name), change)
    return files


def _practical_file(name: str) -> str:
    return f"practicals/{name.replace(' ', '-')}.yml"


def judged(files: Files, folder: Path) -> Handbook:
    """The files, written into an empty folder and judged from there."""
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        if name.endswith(".csv"):
            path.write_text(_as_csv(data[ROWS]))
        else:
            path.write_text(yaml.dump(data, Dumper=yaml.CSafeDumper, allow_unicode=True, sort_keys=False))
    return handbook(folder)


def _as_csv(rows: Plain) -> str:
    assert isinstance(rows, list)
    texts = [row for row in rows if isinstance(row, dict)]
    columns = list(dict.fromkeys(column for row in texts for column in row))
    written = io.StringIO()
    writer = csv.DictWriter(written, columns, restval="", lineterminator="\n")
    writer.writeheader()
    writer.writerows(texts)
    return written.getvalue()


def _edit_file(files: Files, name: str, change: Plain) -> None:
    if isinstance(change, dict) and name not in files and "like" in change:
        files[name] = copy.deepcopy(files[_practical_file(str(change.pop("like")))])
    new = merged(files.get(name, {}), change)
    if new == LEFT_OUT:
        del files[name]
    else:
        assert isinstance(new, dict)
        files[name] = new


def _edit_limits(files: Files, key: str, change: Plain) -> None:
    of_pack, _, wanted = key.rpartition("/")
    wanted, _, applies = wanted.removesuffix(")").partition(" (")
    met = False
    for name, pack in files.items():
        if not name.startswith(f"limits/{of_pack}"):
            continue
        limits = []
        for limit in pack["limits"]:
            assert isinstance(limit, dict)
            so = not applies or applies in str(limit.get("applies_to", ""))
            meant = so and wanted in ("*", limit["key"])
            met = met or meant
            limits += [merged(limit, change) if meant else limit]
        pack["limits"] = [limit for limit in limits if limit != LEFT_OUT]
    if not met:
        assert isinstance(change, dict), f"there is no limit {key}"
        house = files[f"limits/{of_pack or 'house'}.yml"]["limits"]
        assert isinstance(house, list)
        of_law: dict[str, Plain] = (
            {"citation": "land-law"} if change.get("layer", "local rule") != "local rule" else {}
        )
        house.append({"key": wanted, **NEW_LIMIT, **of_law, **change})


def merged(old: Plain, change: Plain) -> Plain:
    """A value with a change made to it."""
    if not isinstance(change, dict):
        return change
    if isinstance(old, list):
        return _patched_list(old, change)
    result: dict[str, Plain] = dict(old) if isinstance(old, dict) else {}
    for key, value in change.items():
        if value == LEFT_OUT:
            assert key in result, f"there is no {key} to leave out"
            del result[key]
        elif isinstance(value, dict) and "like" in value and key not in result:
            model = result[str(value.pop("like"))]
            result[key] = merged(copy.deepcopy(model), value)
        else:
            result[key] = merged(result.get(key, ""), value)
    return result


def _patched_list(old: list[Plain], change: dict[str, Plain]) -> list[Plain]:
    numbered = {str(number): value for number, value in enumerate(old, start=1)}
    order = str(change.pop("order", "")).split()
    for number in sorted(change, key=int):
        assert int(number) <= len(numbered) + 1, f"there is no element {number} yet"
        of_one = change[number]
        if isinstance(of_one, dict) and "like" in of_one and number not in numbered:
            numbered[number] = copy.deepcopy(numbered[str(of_one.pop("like"))])
        numbered[number] = merged(numbered.get(number, ""), of_one)
    kept = {number: value for number, value in numbered.items() if value != LEFT_OUT}
    assert not order or sorted(order) == sorted(kept), f"order must name {' '.join(kept)}"
    return [kept[number] for number in order or kept]
