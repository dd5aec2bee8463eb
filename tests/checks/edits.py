"""Edits the bench, a small clean handbook, by patches, and judges what comes of it.

A patch is YAML. Its top keys name what is edited: ``source bench`` a practical; ``sources``, ``supplies``,
``rooms``, ``contacts``, ``kit``, ``hazards``, ``citations``, ``emergencies``, ``skills`` entries by id;
``department`` its own file; ``limits`` limits by key, in whatever pack, ``electrical.current (dc)`` only
those that apply to dc. Below, blocks are merged; a list is patched by a block of numbers from 1, the next
number adds an element, and ``order: 1 3 2`` puts it in another order; ``(left out)`` takes a key or element
away; anything else replaces. A new entry may begin as a copy: ``like: N-1``.
"""

import copy
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
        for shelf in ("department", "contacts", "rooms", "sources", "supplies")
    },
    **{shelf: f"{shelf}/bench.yml" for shelf in ("kit", "hazards", "citations")},
    **{shelf: f"reference/{shelf}.yml" for shelf in ("substances", "nuclides")},
}
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
    return {str(path.relative_to(BENCH)): plain(path.read_text()) for path in sorted(BENCH.rglob("*.yml"))}


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
        path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False))
    return handbook(folder)


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
    wanted, _, applies = key.removesuffix(")").partition(" (")
    met = False
    for name, pack in files.items():
        if not name.startswith("limits/"):
            continue
        limits = []
        for limit in pack["limits"]:
            assert isinstance(limit, dict)
            meant = limit["key"] == wanted and (not applies or applies in str(limit.get("applies_to", "")))
            met = met or meant
            limits += [merged(limit, change) if meant else limit]
        pack["limits"] = [limit for limit in limits if limit != LEFT_OUT]
    if not met:
        assert isinstance(change, dict), f"there is no limit {key}"
        house = files["limits/house.yml"]["limits"]
        assert isinstance(house, list)
        house.append({"key": wanted, **NEW_LIMIT, **change})


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
        numbered[number] = merged(numbered.get(number, ""), change[number])
    kept = {number: value for number, value in numbered.items() if value != LEFT_OUT}
    assert not order or sorted(order) == sorted(kept), f"order must name {' '.join(kept)}"
    return [kept[number] for number in order or kept]
