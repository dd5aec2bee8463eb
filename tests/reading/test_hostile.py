"""Whatever stands in a file, reading it ends soon and in findings, never in an exception."""

import os
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

import tiny
from clampstand.findings import Spot
from clampstand.reading import Places, read
from clampstand.reading.places import read_sheet

LONGEST = 2.0
"""Seconds for the worst file, with a machine that has other things to do."""

MARKS = st.text(alphabet=" \n\t-:#&*!|>'\"{}[],?%@`\\abc12\u00a0\u202e\x00\ufeff<", max_size=200)
WORDS = st.one_of(
    MARKS, st.text(max_size=40), st.sampled_from(["yes", "2 m", "{supply}", "{", "}", "{free: x}"])
)
TREES = st.recursive(
    WORDS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(WORDS, inner, max_size=4),
    max_leaves=25,
)
KEYS = ["title", "run", "kit", "numbers", "where", "needs", "review", "sources", "ages", "expect", "circuits"]

patient = settings(
    max_examples=120, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@patient
@example(b"text #! a comment that is warned of")
@given(st.binary(max_size=400) | MARKS.map(lambda text: text.encode("utf-8", "surrogatepass")))
def test_any_bytes(tmp_path: Path, raw: bytes) -> None:
    reading = read(tiny.write(tmp_path, {"kit/more.yml": raw, "practicals/sparks.yml": raw}))
    assert reading.book is not None
    assert "sparks" not in reading.book.practicals
    assert any(
        finding.stops and finding.place.file == "practicals/sparks.yml" for finding in reading.findings
    )


@patient
@given(st.dictionaries(st.sampled_from(KEYS), TREES, max_size=6))
def test_any_tree_as_a_practical(tmp_path: Path, tree: dict[str, Any]) -> None:
    whole = yaml.safe_load(tiny.TINY["practicals/sparks.yml"])
    text = yaml.safe_dump({**{k: v for k, v in whole.items() if k != "review"}, **tree}, allow_unicode=True)
    reading = read(tiny.write(tmp_path, {"practicals/odd.yml": text}))
    assert all(finding.place.line >= 1 for finding in reading.findings)
    for finding in reading.findings:
        lines = reading.lines.get(finding.place.file, [""])
        assert finding.place.line <= len(lines)


def _misnamed() -> bytes:
    return b"a:\n" + b"".join(b" nam%d: x\n" % n for n in range(9000))


BOMBS = {
    "brackets": b"[" * 900_000,
    "braces": b"{" * 900_000,
    "blocks": b"\n".join(b" " * n + b"a:" for n in range(1300)),
    "questions": b"? " * 400_000,
    "hyphens": b"- " * 400_000,
    "colons": b"a: " * 300_000,
    "quote": b"a: '" + b"x" * 900_000,
    "one line": b"a: " + b"x" * 900_000,
    "laughs": b"a: &a [x,x]\n" + b"".join(b"a%d: &a%d [*a,*a,*a]\n" % (n, n) for n in range(9000)),
    "keys": b"".join(b"k%d: 1\n" % n for n in range(90_000)),
    "misnamed keys": _misnamed(),
    "lost texts": b"a: [" + b"x #y\n ," * 9000 + b"]",
    "nothing": b"a: [" + b"{a}," * 9000 + b"]",
    "long key": b"k" * 100_000 + b": x",
    "long name": b"a: {name: " + b"n" * 900_000 + b"}",
    "long id": b"a: {hazards: [" + b",".join(b"h" * 79 for _ in range(9000)) + b"]}",
    "brackets in prose": b"a: {name: n, note: '" + b"{" * 900_000 + b"'}",
    "comment": b"#" * 990_000,
    "spaces": b" " * 990_000,
    "line feeds": b"\n" * 990_000,
    "tabs": b"\t" * 990_000,
    "too large": b"x" * 1_000_001,
}


@pytest.mark.parametrize("name", BOMBS)
@pytest.mark.parametrize("file", ["kit/more.yml", "practicals/sparks.yml", "limits/more.yml"])
def test_bombs_go_off_quietly(name: str, file: str, tiny_content: Callable[..., Path]) -> None:
    content = tiny_content({file: BOMBS[name]})
    start = time.process_time()
    reading = read(content)
    assert time.process_time() - start < LONGEST
    assert any(finding.stops for finding in reading.findings), "a bomb is no handbook"
    assert len(reading.findings) <= 120


@pytest.mark.parametrize(
    ("raw", "line", "column", "words"),
    [
        (b"a: {name: caf\xe9}\n", 1, 14, "not saved as UTF-8"),
        (b"\xff\xfea\x00:\x00", 1, 1, "not saved as UTF-8"),
        (b"a:\n  name: x\x00y\n", 2, 10, "invisible character here (U+0000)"),
        ("a:\n  name: x\u202ey\n".encode(), 2, 10, "invisible character here (U+202E)"),
        ("a:\n  name: x\u2028y\n".encode(), 2, 10, "invisible character here (U+2028)"),
        (b'a:\n  name: "x\\0y"\n', 2, 9, "invisible character in this text"),
        ("a:\n\u00a0\u00a0name: x\n".encode(), 2, 1, "begins with a space that is none"),
        ("a:\n  name\u00a0of: x\n".encode(), 2, 3, "no-break space"),
        (b"a: \xed\xa0\x80", 1, 4, "not saved as UTF-8"),
        (b"a:\n  name: x\ry\n", 2, 10, "invisible character here (U+000D)"),
    ],
)
def test_what_nobody_sees(
    raw: bytes, line: int, column: int, words: str, tiny_content: Callable[..., Path]
) -> None:
    found = [f for f in read(tiny_content({"kit/more.yml": raw})).findings if f.rule == "reading"]
    assert [(f.place.line, f.place.column) for f in found] == [(line, column)]
    assert words in found[0].message


def test_windows_line_ends_and_byte_order_mark_are_welcome(tiny_content: Callable[..., Path]) -> None:
    text = tiny.TINY["practicals/sparks.yml"].replace("led_by: teacher", "led_by: techer")
    raw = b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode()
    (finding,) = read(tiny_content({"practicals/sparks.yml": raw})).findings
    assert (finding.place.line, finding.place.column, finding.place.width) == (6, 9, 6)


def test_links_are_not_followed(tiny_content: Callable[..., Path], tmp_path: Path) -> None:
    content = tiny_content()
    (tmp_path / "secret.yml").write_text("a: {name: secret}")
    (content / "kit" / "link.yml").symlink_to(tmp_path / "secret.yml")
    (content / "skills2").symlink_to(tmp_path)
    reading = read(content)
    assert [(f.place.file, f.rule) for f in reading.findings] == [
        ("kit/link.yml", "reading"),
        ("skills2", "reading"),
    ]
    assert all("link" in finding.message for finding in reading.findings)
    assert "a" not in reading.book.kit  # type: ignore[union-attr]


def test_odd_files_are_named_and_not_opened(tiny_content: Callable[..., Path]) -> None:
    content = tiny_content(
        {"kit/more.yaml": "a: b", "practical/x.yml": "", "kit/-rf.yml": "a: b", ".git/x": ""}
    )
    os.mkfifo(content / "kit" / "pipe.yml")
    (content / "kit" / os.fsdecode(b"\xff.yml")).write_text("a: b")
    (content / "kit" / "inner").mkdir()
    (content / "practicals" / "old").mkdir()
    (content / "practicals" / "old" / "one.yml").write_text("title: One")
    told = [(f.place.file, str(f.severity), f.mend) for f in read(content).findings]
    assert told == [
        ("kit/-rf.yml", "stop", "use letters, digits, hyphens and dots, a letter first"),
        ("kit/\\udcff.yml", "stop", "use letters, digits, hyphens and dots, a letter first"),
        ("kit/inner", "warning", "put the files directly into the folder above"),
        ("kit/more.yaml", "stop", "rename it: a definition is a file whose name ends in .yml"),
        ("kit/pipe.yml", "warning", "put the files directly into the folder above"),
        ("practical", "warning", "did you mean practicals?"),
        ("practicals/old", "stop", "put the files directly into the folder above"),
    ]


@patient
@given(MARKS, st.lists(st.text(max_size=5) | st.integers(0, 9), max_size=5), st.booleans())
def test_any_route_has_a_place(text: str, route: list[str | int], at_key: bool) -> None:
    place = Places({"f.yml": text}).of(Spot("f.yml", tuple(route), at_key))
    assert place.file == "f.yml"
    assert 1 <= place.line <= text.count("\n") + 1
    assert place.column >= 1
    assert place.width >= 1


@patient
@given(st.dictionaries(st.from_regex(r"[a-z]{1,8}", fullmatch=True), TREES, min_size=1, max_size=5))
def test_data_are_what_was_written(tree: dict[str, Any]) -> None:
    text = yaml.safe_dump(tree, default_style='"', allow_unicode=True)
    sheet = read_sheet(text, "f.yml")
    if not sheet.findings:
        assert sheet.data == yaml.load(text, yaml.BaseLoader)
