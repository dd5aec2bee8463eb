"""Findings as text, JSON and pull-request notes."""

import json

from clampstand.findings import Finding, Layer, Place, Severity, Whose, in_order
from clampstand.reports import as_github, as_json, as_text, tally

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


def test_json_has_every_key():
    payload = json.loads(as_json([FOUND]))
    assert payload["version"] == 1
    assert payload["findings"][0]["severity"] == "stop"
    assert payload["findings"][0]["layer"] == "local rule"
    assert payload["findings"][0]["related"][0]["words"] == "declared here"


def test_github_notes_escape_what_would_end_them():
    place = Place("my file, v2.yml", 1, 1)
    note = as_github([Finding(place, "r", Severity.STOP, "50 %\nof it", mend="a: b")], "content")
    assert note == (
        "::error file=content/my file%2C v2.yml,line=1,col=1,endColumn=2,title=r::50 %25%0Aof it. a: b"
    )


def test_one_order_for_all():
    early = Finding(Place("a.yml", 1, 1), "z", Severity.WARNING, "m")
    late = Finding(Place("a.yml", 2, 1), "a", Severity.STOP, "m")
    assert in_order([FOUND, late, early]) == [early, late, FOUND]
    assert tally([FOUND, late, early]) == "2 stops, 1 warning"
