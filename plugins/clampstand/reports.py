"""Findings as a person reads them in a terminal, as JSON, and as notes on a pull request."""

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from clampstand.findings import Finding, Place, Severity

_WINDOW = 92
"""Characters of a source line that are shown; longer lines show the part around the mark."""

JSON_VERSION = 1

SourceLines = Mapping[str, Sequence[str]]
"""The lines of each content file, for showing the text a finding is about."""


def as_text(findings: Iterable[Finding], lines: SourceLines) -> str:
    """Findings one below the other, each with its line and a mark under the place."""
    return "\n\n".join(one_as_text(finding, lines) for finding in findings)


def one_as_text(finding: Finding, lines: SourceLines) -> str:
    """One finding: where, what, the line itself, what is needed, whose rule it is, how to mend it."""
    head = f"{_address(finding.place)}: {finding.severity} [{finding.rule}] {finding.message}"
    parts = [head, *_marked(finding.place, lines, "^")]
    for place, words in finding.related:
        parts += [f"  {_address(place)}: {words}", *_marked(place, lines, "-")]
    if finding.found:
        parts.append(f"  found:  {finding.found}")
    if finding.needed:
        parts.append(f"  needed: {finding.needed}")
    if finding.whose is not None:
        where = f" ({_address(finding.whose_place)})" if finding.whose_place else ""
        cited = f", from {finding.whose.citation}" if finding.whose.citation else ""
        parts.append(f"  whose:  {finding.whose.layer} – {finding.whose.says}{cited}{where}")
    if finding.mend:
        parts.append(f"  mend:   {finding.mend}")
    return "\n".join(parts)


def _address(place: Place) -> str:
    return f"{place.file}:{place.line}:{place.column}"


def _marked(place: Place, lines: SourceLines, mark: str) -> list[str]:
    """The line of a place with marks under it; nothing where the line is not known."""
    known = lines.get(place.file, ())
    if not 1 <= place.line <= len(known):
        return []
    text = known[place.line - 1].rstrip("\r\n").replace("\t", " ")
    start = max(0, place.column - 1 - _WINDOW // 2) if len(text) > _WINDOW else 0
    shown = text[start : start + _WINDOW]
    at = place.column - 1 - start
    width = max(1, min(place.width, len(shown) - at))
    gutter = len(str(place.line))
    return [f"  {place.line} | {shown}", f"  {' ' * gutter} | {' ' * at}{mark * width}"]


def as_json(findings: Iterable[Finding]) -> str:
    """Findings as JSON, version :data:`JSON_VERSION`; every key is always there."""
    payload = {"version": JSON_VERSION, "findings": [_plain(finding) for finding in findings]}
    return json.dumps(payload, ensure_ascii=False, indent=2, sort_keys=True)


def _plain(finding: Finding) -> dict[str, Any]:
    whose = finding.whose
    return {
        "file": finding.place.file,
        "line": finding.place.line,
        "column": finding.place.column,
        "width": finding.place.width,
        "rule": finding.rule,
        "severity": str(finding.severity),
        "subject": finding.subject,
        "message": finding.message,
        "found": finding.found,
        "needed": finding.needed,
        "mend": finding.mend,
        "layer": str(whose.layer) if whose else "",
        "whose": whose.says if whose else "",
        "citation": whose.citation if whose else "",
        "related": [
            {"file": place.file, "line": place.line, "column": place.column, "words": words}
            for place, words in finding.related
        ],
    }


def as_github(findings: Iterable[Finding], folder: str) -> str:
    """Findings as GitHub workflow commands, which show on the changed lines of a pull request.

    Args:
        findings: what was found.
        folder: the content folder's path in the repository, put before each file.
    """
    return "\n".join(_github_line(finding, folder) for finding in findings)


def _github_line(finding: Finding, folder: str) -> str:
    place = finding.place
    kind = "error" if finding.severity is Severity.STOP else "warning"
    properties = {
        "file": f"{folder}/{place.file}" if folder else place.file,
        "line": str(place.line),
        "col": str(place.column),
        "endColumn": str(place.column + place.width),
        "title": finding.rule,
    }
    told = ",".join(f"{name}={_escaped(value, in_property=True)}" for name, value in properties.items())
    words = ". ".join(
        filter(None, (finding.message, f"Needed: {finding.needed}" if finding.needed else "", finding.mend))
    )
    return f"::{kind} {told}::{_escaped(words, in_property=False)}"


def _escaped(text: str, *, in_property: bool) -> str:
    pairs = [("%", "%25"), ("\r", "%0D"), ("\n", "%0A")]
    if in_property:
        pairs += [(":", "%3A"), (",", "%2C")]
    for character, code in pairs:
        text = text.replace(character, code)
    return text


def tally(findings: Sequence[Finding]) -> str:
    """How many stops and warnings there are, in words."""
    stops = sum(finding.stops for finding in findings)
    warnings = len(findings) - stops
    return f"{stops} stop{'s' if stops != 1 else ''}, {warnings} warning{'s' if warnings != 1 else ''}"
