"""Every kind of name is looked up, told at its place, and told only when the name really is nowhere."""

import typing
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

import tiny
from clampstand.model.base import Definition, Entry, Id
from clampstand.model.book import Book
from clampstand.model.step import Step
from clampstand.reading import read
from clampstand.reading.names import NAMED, NAMED_BY_KEY, NO_NAME, SHELVES

P, K, L, S, E = (
    "practicals/sparks.yml",
    "kit/all.yml",
    "limits/house.yml",
    "skills/forceps-work.yml",
    "emergencies/electric-shock.yml",
)
KITLESS = "is in the department's kit but not in this practical's kit list"


def line_of(file: str, fragment: str) -> int:
    return tiny.TINY[file].split(fragment)[0].count("\n") + 1


@pytest.mark.parametrize(
    ("file", "old", "new", "written", "message", "mend"),
    [
        (
            P,
            "item: plates",
            "item: plate",
            "plate",
            "not one of the items of the kit",
            "did you mean plates?",
        ),
        (
            P,
            "item: plates, per: class}",
            "item: plates, per: class}\n  - {item: lab, per: class}",
            "lab",
            "lab is one of the rooms, not of the items of",
            "there are",
        ),
        (P, "run: lab", "run: lob", "lob", "lob is not one of the rooms", "did you mean lab?"),
        (
            P,
            "one_of: S-1",
            "one_of: S-2",
            "S-2",
            "not one of the sources of the register",
            "did you mean S-1?",
        ),
        (
            P,
            "skills: forceps-work",
            "skills: forceps-wrok",
            "forceps-wrok",
            "not one of the skills",
            "did you",
        ),
        (
            P,
            "emergency: electric",
            "emergency: elektric",
            "elektric-shock",
            "of the emergencies",
            "did you mean",
        ),
        (P, "hazard: shock", "hazard: shok", "shok", "not one of the hazards", "did you mean shock?"),
        (P, "approved_by: lead", "approved_by: leed", "leed", "not one of the contacts", "mean lead?"),
        (
            P,
            "obeys: radiation.hand",
            "obeys: radiation.hnd",
            "radiation.hnd-to-source",
            "no limit",
            "did you",
        ),
        (
            P,
            "feeds: plates",
            "feeds: plate",
            "plate",
            "not in this practical's kit list",
            "did you mean plates?",
        ),
        (
            P,
            "voltage: working",
            "voltage: workng",
            "workng voltage",
            "numbers declared here",
            "did you mean working",
        ),
        (P, "{supply: working", "{supply: workng", "workng voltage", "numbers declared here", "did you mean"),
        (
            P,
            "{supply: work",
            "{suply: work",
            "suply",
            "not in this practical's kit list",
            "did you mean supply?",
        ),
        (
            P,
            "takes_out: source",
            "takes_out: sauce",
            "sauce",
            "not the name of a source here",
            "did you mean source?",
        ),
        (P, "holds_with: forceps", "holds_with: forcep", "forcep", "kit list", "did you mean forceps?"),
        (
            P,
            "hands: hand dist",
            "hands: hnd dist",
            "hnd distance",
            "neither a number",
            "did you mean hand distance?",
        ),
        (P, "{forceps}", "{forcep}", "forcep", "{forcep} quotes nothing", "did you mean forceps?"),
        (
            P,
            "{hand distance}",
            "{100 mm}",
            "100 mm",
            "a quantity, not the name of one",
            "write {free: 100 mm}",
        ),
        (P, "{free: 50 mm}", "{free: half}", "free: half", "marks no quantity", "{free: 50 mm}"),
        (P, "{forceps}", "{forceps", "Bring", "a curly bracket has no partner", "on one line"),
        (
            P,
            "takes: 5 min\n    takes",
            "takes: 5 min\n    after: on\n    takes",
            "on",
            "name of a step",
            "none yet",
        ),
        (
            P,
            "takes: 5 min\n    takes",
            "takes: 5 min\n    builds_on: i\n    takes",
            "i",
            "in no step",
            "none yet",
        ),
        (S, "kit: forceps", "kit: [forceps, tongs]", "tongs", "not one of the items of the kit", "there are"),
        (
            S,
            "takes_out: source",
            "takes_out: sorce",
            "sorce",
            "not the name of a source here",
            "did you mean",
        ),
        (E, "ring: lead", "ring: lad", "lad", "not one of the contacts", "did you mean lead?"),
        (E, "wall.}", "wall., needs: rope}", "rope", "not one of the items of the kit", "there are"),
        (L, "citation: rules", "citation: ruls", "ruls", "not one of the citations", "did you mean rules?"),
        (
            K,
            "{name: plates}",
            "{name: plates, instead: plate}",
            "plate",
            "items of the kit",
            "did you mean plates",
        ),
        ("department/department.yml", "[house,", "[hose,", "hose", "packs of limits", "did you mean house?"),
        (
            "department/sources.yml",
            "Am-241",
            "Am-214",
            "Am-214",
            "not one of the nuclides",
            "did you mean Am-241?",
        ),
        (
            "department/supplies.yml",
            "item: supply",
            "item: suply",
            "suply",
            "items of the kit",
            "did you mean supply?",
        ),
        (
            "department/rooms.yml",
            "equipment: fire",
            "equipment: fir",
            "fir-blanket",
            "items of the kit",
            "did you",
        ),
        (
            "reference/nuclides.yml",
            "citation: rules}",
            "citation: ruls}",
            "ruls",
            "citations",
            "did you mean rules?",
        ),
    ],
)
def test_unknown_name(
    file: str,
    old: str,
    new: str,
    written: str,
    message: str,
    mend: str,
    tiny_content: Callable[..., Path],
) -> None:
    text = tiny.TINY[file]
    assert old in text
    before, after = text.split(old, 1)
    changed = before + new + after
    found = [f for f in read(tiny_content({file: changed})).findings if f.place.file == file]
    assert len(found) == 1, found
    (finding,) = found
    assert finding.rule == "unknown-id"
    assert finding.stops
    assert finding.subject
    assert message in finding.message
    assert mend in finding.mend
    line = changed.split("\n")[finding.place.line - 1]
    if "{" not in finding.message and "partner" not in message and "quantity" not in message:
        assert line[finding.place.column - 1 :][: finding.place.width] == written
    else:  # a quote is told at the sentence it stands in
        assert line[finding.place.column - 1 :].lstrip('"').startswith(("Bring", "Set"))


def test_item_of_the_department_that_is_not_in_the_kit_list(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY[P].replace("  - {item: plates, per: class}\n", "")
    told = [(f.place.line, f.message, f.mend) for f in read(tiny_content({P: text})).findings]
    assert told == [(18, f"plates {KITLESS}", "add it to the kit list")]


def test_equipment_of_the_room_may_be_named(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY[P].replace("Set {supply} to", "Put up {fire-blanket}. Set {supply} to")
    text = text.replace("    switches_on", "    puts_up: fire-blanket\n    switches_on")
    assert read(tiny_content({P: text})).findings == ()


def test_two_of_one_name(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY[P].replace("[{one_of: S-1}]", "[{one_of: S-1}, {one_of: S-1}]")
    (finding,) = read(tiny_content({P: text})).findings
    assert (finding.rule, finding.place.line, finding.place.column) == ("schema", 18, 26)
    assert finding.message == "source is the name of an earlier source already"


@pytest.mark.parametrize(
    ("file", "broken"),
    [
        (K, tiny.TINY[K].replace("{name: plates}", "{nme: plates}")),
        (K, tiny.TINY[K].replace("{name: plates}", "{name: plates")),
        (K, tiny.TINY[K].replace("{name: plates}", "{name: caf\u00e9}").encode("latin-1")),
        (L, tiny.TINY[L].replace("at_least: 100 mm", "at_least: 100")),
        (L, tiny.TINY[L].replace("title: Hand", "title: 'Hand")),
        (S, tiny.TINY[S].replace("lasts: 12 months", "lasts: long")),
        (S, "'"),
        (E, tiny.TINY[E] + "more: x\n"),
        ("department/rooms.yml", tiny.TINY["department/rooms.yml"].replace("200 m³", "200")),
        ("department/sources.yml", "S-1: {}\n"),
        ("hazards/all.yml", "shock: [\n"),
        ("citations/all.yml", "rules: {title: x}\nadvice: {title: x}\n"),
        ("reference/nuclides.yml", "Am-241: x\n"),
        ("department/contacts.yml", "lead: {role: x}\ntechnician: {role: x}\n"),
    ],
)
def test_what_is_broken_is_not_told_to_be_unknown_as_well(
    file: str, broken: str | bytes, tiny_content: Callable[..., Path]
) -> None:
    reading = read(tiny_content({file: broken}))
    assert reading.findings
    assert {finding.place.file for finding in reading.findings} == {file}
    assert reading.broken
    assert reading.book is not None


def _classes(of: type) -> Iterator[type[Definition]]:
    for each in of.__subclasses__():
        yield each
        yield from _classes(each)


def _has_id(annotation: Any) -> bool:
    return annotation == Id or any(_has_id(inner) for inner in typing.get_args(annotation))


def _keys_are_ids(annotation: Any) -> bool:
    return typing.get_origin(annotation) is dict and typing.get_args(annotation)[0] == Id


def test_every_id_of_the_model_is_looked_up_or_said_not_to_be() -> None:
    told = {*NAMED, *NAMED_BY_KEY, *NO_NAME}
    for kind in _classes(Definition):
        hints = typing.get_type_hints(kind, include_extras=True)
        for name in kind.model_fields:
            if _has_id(hints[name]):
                assert (kind, name) in told, f"{kind.__name__}.{name} is an id that nobody looks up"
    assert (Step, "takes_out") in NAMED


def test_the_tables_name_fields_and_shelves_there_are() -> None:
    for kind, name in {*NAMED, *NAMED_BY_KEY, *NO_NAME}:
        assert name in kind.model_fields, (kind, name)
    shelves = {name for name in Book.__dataclass_fields__ if name != "department"}
    assert set(SHELVES) == shelves
    assert {kind.shelf for kind in _classes(Entry)} - {"limits", "department", ""} == shelves


def test_a_stop_word_is_quoted_only_where_one_is_declared(tiny_content: Callable[[Any], Path]):
    quoting = tiny.TINY[P].replace("aim: ", "brief: My stop word is {stop word}.\naim: ", 1)
    reading = read(tiny_content({P: quoting}))
    assert [finding.rule for finding in reading.findings] == ["unknown-id"]
    assert "stop word" in reading.findings[0].message
    declared = read(tiny_content({P: quoting.replace("brief: ", "stop_word: freeze\nbrief: ", 1)}))
    assert not declared.findings


def test_several_numbers_are_given_with_commas_and_each_is_looked_up(tiny_content: Callable[[Any], Path]):
    asked = 'expect:\n  - {compute: scatter-of-counts, given: {counts: "one count, another"}}\nemergency:'
    numbers = "numbers:\n  one count: {value: 41 counts, because: it was so}\n"
    first = tiny.TINY[P].replace("emergency:", asked).replace("numbers:\n", numbers)
    (finding,) = read(tiny_content({P: first})).findings
    assert finding.rule == "unknown-id"
    assert finding.message.startswith("one count, another is no number")
    both = first.replace(numbers, numbers + "  another: {value: 36 counts, because: it was so}\n")
    assert not read(tiny_content({P: both})).findings
