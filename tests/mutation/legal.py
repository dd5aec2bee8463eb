"""Legal edits: other names, other units, other words, another order of what does not depend on each other.

None of them may make a rule find anything: whatever is found is a false alarm.
"""

import copy
import csv
import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

import yaml

from clampstand.checks import Lesson
from clampstand.model.base import Entry
from clampstand.model.practical import Practical
from clampstand.reading.names import DISTANCE, GIVEN, NUMBER, OWN_KIT, QUOTE, SHELVES, SLOT, names_in
from clampstand.units import KINDS, NotAnAmount, read_amount
from clampstand.units.kinds import unit_written
from mutation.edits import TELLING, Edit, Plain, Route, at, put, scalars, steps_swapped
from mutation.judge import content, made, plain, texts
from mutation.same import independent

RENAMED = ("kit", "rooms", "sources", "supplies", "hazards", "emergencies", "citations", "contacts", "skills")
COLUMNS = {
    "kit": {"thing", "item"},
    "rooms": {"room"},
    "sources": {"source", "thing"},
    "supplies": {"unit", "thing"},
    "skills": {"skill"},
    "citations": {"citation"},
}
"""Shelf → the columns of the tables that name something on it."""
SMALLEST = 1e-9
"""Numbers smaller or greater than a person would write are left as they are."""
INTERVALS = frozenset({"lead", "working_life", "every", "at_most_interval", "review_every", "warn_before"})
_BRACES = re.compile(r"\{([^{}\n]{1,300})\}")
_SENTENCES = frozenset(
    {"do", "here", "see", "show", "note", "fix", "seen", "cause", "question", "answer", "says", "really"}
)


def renamed(shelf: str, folder: Path) -> None:
    """Writes the demo content into a folder with every id of one shelf exchanged for one without meaning."""
    book = content()
    new = {its_id: f"thing-{number}" for number, its_id in enumerate(sorted(book.shelf(shelf)), start=1)}
    files: dict[str, Plain] = {name: yaml.load(text, yaml.CBaseLoader) for name, text in _yaml().items()}
    for of_shelf in SHELVES:
        for entry in book.shelf(of_shelf).values():
            if entry.spot.file in files:
                _rename_in(at(files[entry.spot.file], entry.spot.route), entry, shelf, new)
    _rename_in(files["department/department.yml"], book.department, shelf, new)
    for file, written in files.items():
        name, data = file, written
        own = {entry.spot.file: entry for entry in book.shelf(shelf).values()}
        if name in own and own[name].spot.route:
            data = {new.get(key, key): value for key, value in data.items()}
        folder_name, _, stem = name.rpartition("/")
        if name in own and not own[name].spot.route:
            name = f"{folder_name}/{new[stem.removesuffix('.yml')]}.yml"
        written_again = yaml.dump(
            data, Dumper=yaml.CSafeDumper, allow_unicode=True, sort_keys=False, width=1000
        )
        _write(folder / name, written_again)
    for name, text in texts().items():
        if name.endswith(".csv"):
            _write(folder / name, _table(text, COLUMNS.get(shelf, set()), new))


def _table(text: str, columns: set[str], new: Mapping[str, str]) -> str:
    head, *rows = csv.reader(io.StringIO(text))
    written = io.StringIO()
    changed = [
        [new.get(cell, cell) if column in columns else cell for column, cell in zip(head, row, strict=False)]
        for row in rows
    ]
    csv.writer(written, lineterminator="\n").writerows([head, *changed])
    return written.getvalue()


def _yaml() -> Mapping[str, str]:
    return {name: text for name, text in texts().items() if name.endswith(".yml")}


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def _rename_in(data: Plain, entry: Entry, shelf: str, new: Mapping[str, str]) -> None:
    """Exchanges every name of a shelf in the data of one definition, in place."""
    asked = {shelf, QUOTE} | ({GIVEN} if shelf in COLUMNS and shelf != "skills" else set())
    asked |= {OWN_KIT} if shelf == "kit" else {SLOT} if shelf == "sources" else set()
    own = {*getattr(entry, "numbers", ()), *(slot.name for slot in getattr(entry, "sources", ()) or ())}
    # Where two have one id, a bare name means the item of the kit.
    own |= set(content().kit) if shelf != "kit" else set()
    taken = {old: name for old, name in new.items() if old not in own}
    keys: list[tuple[Route, str]] = []
    for named in names_in(entry):
        if named.shelf not in asked:
            continue
        if named.at_key:
            keys.append((named.route, named.text))
            continue
        text = _inside(data, named.route)
        if named.shelf == QUOTE:
            _set(data, named.route, _BRACES.sub(lambda m: f"{{{taken.get(m[1], m[1])}}}", text))
        else:
            known = new if named.shelf == shelf else taken
            _set(
                data,
                named.route,
                _each_renamed(text, known) if named.shelf == GIVEN else known.get(text, text),
            )
    for (*way, _), old in keys:
        block = at(data, tuple(way))
        for key in [key for key in block if key == old and old in taken]:
            block[taken[key]] = block.pop(key)


def _each_renamed(text: str, new: Mapping[str, str]) -> str:
    """What a calculator is given, where several names may stand with commas between."""
    return ", ".join(new.get(name, name) for name in (part.strip() for part in text.split(",")))


def _inside(data: Plain, route: Route) -> str:
    text = at(data, route)
    assert isinstance(text, str)
    return text


def _set(data: Plain, route: Route, text: str) -> None:
    *way, last = route
    for index, part in enumerate(way):
        if isinstance(data[part], str):  # a single one that stands for a list of itself
            assert index == len(way) - 1
            data[part] = text
            return
        data = data[part]
    data[last] = text


def own_names_changed(practical: Practical) -> Edit:
    """A practical with other names for all its numbers and source slots."""
    data = copy.deepcopy(plain(practical))
    new = {name: f"quantity {number}" for number, name in enumerate(practical.numbers, start=1)}
    new |= {slot.name: f"slot {number}" for number, slot in enumerate(practical.sources, start=1)}
    for named in names_in(practical):
        if named.shelf in (NUMBER, DISTANCE, SLOT, GIVEN) and not named.at_key:
            text = _inside(data, named.route)
            _set(data, named.route, _each_renamed(text, new))
        elif named.shelf == QUOTE:
            text = _inside(data, named.route)
            _set(data, named.route, _BRACES.sub(lambda m: f"{{{new.get(m[1], m[1])}}}", text))
    data["numbers"] = {new[name]: value for name, value in data.get("numbers", {}).items()}
    for number, slot in enumerate(data.get("sources", []), start=1):
        slot["name"] = f"slot {number}"
    data["sources"] = data.get("sources", [])
    return Edit("own names changed", (), "", "", data)


def units_changed(data: Plain) -> Iterator[Edit]:
    """All quantities at once in other units of equal size: as many edits as units go round."""
    for turn in (1, 2, 3):
        whole, first = data, ""
        for route, text in scalars(data):
            now = _in_another_unit(text, turn) if _is_converted(route) else text
            if now != text:
                whole, first = put(whole, route, now), first or f"{text} → {now}"
        if first:
            yield Edit("units changed", (), first, "", whole)


def _is_converted(route: Route) -> bool:
    """Whether a text is a quantity that may be written in another unit: no tolerance and no sentence."""
    return route[0] not in ("search", "topics", "also", "title") and route[-1] not in (
        *_SENTENCES,
        *("hazard", "avoid", "within"),
        *INTERVALS,
    )


def _in_another_unit(text: str, turn: int) -> str:
    try:
        amount = read_amount(text)
    except NotAnAmount:
        return text
    units = [unit for unit in KINDS[amount.kind].written if not unit[0].isdigit()]
    other = units[(units.index(amount.unit) + turn) % len(units)]
    if not amount.is_single or amount.kind in ("temperature", "temperature difference"):
        return text
    number = float(amount.value.m_as(unit_written(other, amount.kind)))
    return f"{number:.12g} {other}" if number == 0 or SMALLEST < abs(number) < 1 / SMALLEST else text


def steps_reordered(data: Plain) -> Iterator[Edit]:
    """Each pair of neighbouring steps that change nothing and have no name, the other way round."""
    for phase in ("prepare", "set_up", "run", "clear_up"):
        steps = data.get(phase, [])
        for index in range(len(steps) - 1):
            first, second = steps[index], steps[index + 1]
            if all(set(step) <= TELLING - {"name"} for step in (first, second)):
                swapped = [*steps[:index], second, first, *steps[index + 2 :]]
                yield Edit(
                    "steps reordered", (phase, index), first["do"], second["do"], put(data, (phase,), swapped)
                )


def independent_exchanged(practical: Practical) -> Iterator[Edit]:
    """Each pair of neighbouring steps that commute, the other way round."""
    old = Lesson(practical, content())
    for edit in steps_swapped(plain(practical)):
        new = Lesson(made(Practical, edit.data, practical), content())
        phase, index = edit.where
        if independent(practical, str(phase), int(index), old, new):
            yield replace(edit, sort="independent steps exchanged")


def words_changed(data: Plain) -> Edit:
    """A practical with every sentence of its steps in other words."""
    whole = copy.deepcopy(data)
    for phase in ("prepare", "set_up", "run", "clear_up"):
        for step in whole.get(phase, []):
            step["do"] = "Do this as you were shown it, without haste."
    return Edit("words changed", (), "", "", whole)


def singles_listed(data: Plain, entry: Entry) -> Iterator[Edit]:
    """Each single text as a list of itself, wherever that means the same."""
    whole = made(type(entry), data, entry)
    for route, text in scalars(data):
        if isinstance(route[-1], str):
            listed = put(data, route, [text])
            if made(type(entry), listed, entry) == whole:
                yield Edit("single listed", route, text, f"[{text}]", listed)
