"""Findings as text, JSON and pull-request notes."""

import json
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest

from clampstand.checks import RULES
from clampstand.cli import main
from clampstand.findings import Finding, Layer, Place, Severity, Whose, in_order
from clampstand.reports import as_github, as_json, as_sarif, as_text, tally

OASIS = json.loads((Path(__file__).parent / "oasis/sarif-schema-2.1.0.json").read_text())
BENCH = Path(__file__).parent / "checks/bench"

FOUND = Finding(
    place=Place("practicals/alpha.yml", 3, 7, 5),
    rule="hand-to-source-distance",
    severity=Severity.STOP,
    message="hand distance: hands are 50 mm from the source",
    found="50 mm",
    needed="at least 100 mm",
    mend="write 100 mm or more",
    whose=Whose(Layer.LOCAL, "Hand to source: at least 100 mm", "department-rules"),
    whose_place=Place("limits/department.yml", 9, 3),
    related=((Place("practicals/alpha.yml", 1, 1, 4), "declared here"),),
    subject="practicals/alpha",
)
LINES = {"practicals/alpha.yml": ["numbers:", "  hand distance:", "    x: 50 mm"]}


def test_text_shows_the_line_with_a_mark_under_the_place():
    text = as_text([FOUND], LINES)
    assert text.splitlines()[:3] == [
        f"practicals/alpha.yml:3:7: stop [hand-to-source-distance] {FOUND.message}",
        "  3 |     x: 50 mm",
        "    |       ^^^^^",
    ]
    for words in (
        "declared here",
        "needed: at least 100 mm",
        "local rule – Hand to source",
        "limits/department.yml:9:3",
    ):
        assert words in text
    assert text.endswith("mend:   write 100 mm or more")


def test_a_long_line_shows_the_part_around_the_mark():
    place = Place("a.yml", 1, 2000, 4)
    finding = Finding(place, "r", Severity.WARNING, "m")
    shown = as_text([finding], {"a.yml": ["x" * 1999 + "HERE" + "y" * 3000]})
    assert max(map(len, shown.splitlines())) < 120
    line, mark = shown.splitlines()[1:3]
    assert line[mark.index("^") :].startswith("HERE")


JSON_KEYS = [
    *("file", "line", "column", "width", "rule", "severity", "subject"),
    *("message", "found", "needed", "mend", "layer", "whose", "citation", "related"),
]


def test_json_has_every_key_that_developers_are_promised():
    payload = json.loads(as_json([FOUND, Finding(Place("a.yml", 1, 1), "r", Severity.WARNING, "m")]))
    assert payload["version"] == 1
    for finding in payload["findings"]:
        assert sorted(finding) == sorted(JSON_KEYS)
    assert payload["findings"][0]["severity"] == "stop"
    assert payload["findings"][0]["layer"] == "local rule"
    assert payload["findings"][0]["related"][0]["words"] == "declared here"
    written = (
        (Path(__file__).parent.parent / "DEVELOPERS.md").read_text().partition("## The JSON of findings")[2]
    )
    for key in (*JSON_KEYS, "version", "findings"):
        assert f"`{key}`" in written, key


def test_days_are_in_words_where_they_are_read_and_as_typed_where_they_are_typed():
    finding = replace(FOUND, message="tested on 2024-09-04", needed="2025-09-04 or later")
    text = as_text([finding], LINES)
    assert "tested on 4\xa0September\xa02024" in text
    assert "needed: 2025-09-04 or later" in text
    assert "tested on 2024-09-04" in as_json([finding])


def test_json_and_text_say_the_same():
    payload = json.loads(as_json([FOUND]))["findings"][0]
    text = as_text([FOUND], LINES)
    for key in ("message", "found", "needed", "mend", "layer", "whose", "citation", "rule", "severity"):
        assert payload[key] in text, key


def test_github_notes_escape_what_would_end_them():
    place = Place("my file, v2.yml", 1, 1)
    note = as_github([Finding(place, "r", Severity.STOP, "50 %\nof it", mend="a: b")], "content")
    assert note == (
        "::error file=content/my file%2C v2.yml,line=1,col=1,endColumn=2,title=r::50 %25%0Aof it%0Amend: a: b"
    )


def test_github_prints_ten_of_a_kind_and_says_how_many_more_there_are():
    many = [replace(FOUND, place=Place("a.yml", line, 1)) for line in range(1, 26)]
    few = [replace(FOUND, severity=Severity.WARNING, place=Place("b.yml", line, 1)) for line in range(1, 11)]
    notes = as_github([*many, *few], "content").splitlines()
    errors = [note for note in notes if note.startswith("::error")]
    assert len(errors) == 10
    assert errors[-1] == "::error::16 more of this kind; clampstand check lists them all"
    assert len([note for note in notes if note.startswith("::warning ")]) == 10


def sarif(*findings: Finding) -> dict:
    log = json.loads(as_sarif(findings, "content", RULES))
    jsonschema.Draft4Validator(OASIS, format_checker=jsonschema.FormatChecker()).validate(log)
    return log["runs"][0]


def test_the_published_schema_refuses_what_is_no_sarif():
    log = json.loads(as_sarif([FOUND], "content", RULES))
    log["runs"][0]["results"][0]["level"] = "stop"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.Draft4Validator(OASIS).validate(log)


def test_sarif_has_places_levels_and_what_else_matters():
    reading = Finding(Place("my file.yml", 1, 1, 0), "reading", Severity.WARNING, "m")
    run = sarif(FOUND, reading)
    stopped, warned = run["results"]
    place = stopped["locations"][0]["physicalLocation"]
    assert place["artifactLocation"] == {"uri": "content/practicals/alpha.yml", "uriBaseId": "%SRCROOT%"}
    assert place["region"] == {"startLine": 3, "startColumn": 7, "endColumn": 12}
    assert stopped["relatedLocations"][0]["message"]["text"] == "declared here"
    assert (stopped["level"], warned["level"]) == ("error", "warning")
    assert "my%20file.yml" in json.dumps(warned)
    rules = run["tool"]["driver"]["rules"]
    for result in run["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]


def test_sarif_carries_the_page_of_every_rule():
    rules = {rule["id"]: rule for rule in sarif()["tool"]["driver"]["rules"]}
    assert set(rules) == {rule.id for rule in RULES}
    for rule in RULES:
        described = rules[rule.id]
        assert described["shortDescription"]["text"] == rule.page.title
        assert described["fullDescription"]["text"] == rule.page.why
        assert rule.page.whose in described["help"]["text"]


def test_a_finding_is_known_again_when_lines_move():
    moved = replace(FOUND, place=Place(FOUND.place.file, 90, 7, 5))
    twice = [result["partialFingerprints"] for result in sarif(FOUND, FOUND)["results"]]
    assert sarif(moved)["results"][0]["partialFingerprints"] == twice[0]
    assert twice[0] != twice[1]


def test_check_prints_sarif_without_a_path_of_the_machine(tmp_path, capsys):
    content = tmp_path / "content"
    content.mkdir()
    assert main(["check", "--content", str(content), "--format", "sarif"]) == 1
    printed = capsys.readouterr().out
    jsonschema.Draft4Validator(OASIS).validate(json.loads(printed))
    assert "content/department/department.yml" in printed
    assert str(tmp_path) not in printed


def test_check_of_clean_content_prints_sarif_without_results(capsys):
    assert main(["check", "--content", str(BENCH), "--format", "sarif"]) == 0
    assert json.loads(capsys.readouterr().out)["runs"][0]["results"] == []


def test_one_order_for_all():
    early = Finding(Place("a.yml", 1, 1), "z", Severity.WARNING, "m")
    late = Finding(Place("a.yml", 2, 1), "a", Severity.STOP, "m")
    assert in_order([FOUND, late, early]) == [early, late, FOUND]
    assert tally([FOUND, late, early]) == "2 stops, 1 warning"
