"""Every file of ``broken/`` is wrong in the way and at the place its first lines say, and in no other."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from clampstand.findings import Finding, Severity
from clampstand.reading import read

BROKEN = sorted((Path(__file__).parent / "broken").glob("*.yml"))
EXPECT = re.compile(r'# expect: (\d+):(\d+) (\w+) (warning )?"([^"]*)"(?: mend "([^"]*)")?')
PYTHON_WORDS = re.compile(
    r"\b(string|int|integer|float|dict|dictionary|mapping|tuple|validation|regex|field|input|none|null|scalar)\b",
    re.IGNORECASE,
)


def fits(finding: Finding, expected: re.Match[str]) -> bool:
    line, column, rule, warns, message, mend = expected.groups()
    return (
        (finding.place.line, finding.place.column, finding.rule) == (int(line), int(column), rule)
        and finding.severity is (Severity.WARNING if warns else Severity.STOP)
        and message in finding.message
        and (mend or "") in finding.mend
    )


@pytest.mark.parametrize("path", BROKEN, ids=[path.stem for path in BROKEN])
def test_broken_file_is_told_where_and_why(path: Path, tiny_content: Callable[..., Path]) -> None:
    text = path.read_text()
    file = text.split("\n", 1)[0].removeprefix("# file: ")
    expected = [EXPECT.fullmatch(line) for line in text.split("\n") if line.startswith("# expect:")]
    assert expected
    assert all(expected), "an expectation is not written in the form of the others"
    found = read(tiny_content({file: text})).findings
    told = [f"{f.place.line}:{f.place.column} {f.rule} {f.message} / {f.mend}" for f in found]
    assert {finding.place.file for finding in found} == {file}, told
    for each in expected:
        assert any(fits(finding, each) for finding in found), (each[0], told)
    assert len(found) == len(expected), told


@pytest.mark.parametrize("path", BROKEN, ids=[path.stem for path in BROKEN])
def test_findings_speak_to_technicians(path: Path, tiny_content: Callable[..., Path]) -> None:
    file, text = path.read_text().split("\n", 1)
    found = read(tiny_content({file.removeprefix("# file: "): text})).findings
    for finding in found:
        written = finding.message.replace(finding.found, "") if finding.found else finding.message
        assert not PYTHON_WORDS.search(f"{written} {finding.mend}"), finding
        assert finding.mend, finding
        assert finding.whose is not None
        assert len(finding.message) < 200
