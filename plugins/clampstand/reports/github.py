"""Findings as notes on a pull request."""

from collections.abc import Iterable

from clampstand.findings import Finding, Severity

MOST_SHOWN = 10
"""Notes of one kind that a step may leave; what comes after them is dropped without a word."""

_COMMAND = {Severity.STOP: "error", Severity.WARNING: "warning"}


def as_github(findings: Iterable[Finding], folder: str) -> str:
    """Findings as GitHub workflow commands, which show on the changed lines of a pull request.

    Args:
        findings: what was found.
        folder: the content folder's path in the repository, put before each file.
    """
    found = list(findings)
    lines: list[str] = []
    for severity in Severity:
        of_kind = [finding for finding in found if finding.severity is severity]
        # The notice of what is left out takes the place of one note, so that it is not dropped itself.
        shown = of_kind if len(of_kind) <= MOST_SHOWN else of_kind[: MOST_SHOWN - 1]
        lines += [_github_line(finding, folder) for finding in shown]
        if left := len(of_kind) - len(shown):
            lines.append(f"::{_COMMAND[severity]}::{left} more of this kind; clampstand check lists them all")
    return "\n".join(lines)


def _github_line(finding: Finding, folder: str) -> str:
    place = finding.place
    properties = {
        "file": f"{folder}/{place.file}" if folder else place.file,
        "line": str(place.line),
        "col": str(place.column),
        "endColumn": str(place.column + place.width),
        "title": finding.rule,
    }
    told = ",".join(f"{name}={_escaped(value, in_property=True)}" for name, value in properties.items())
    parts = (
        finding.message,
        finding.needed and f"needed: {finding.needed}",
        finding.mend and f"mend: {finding.mend}",
    )
    words = "\n".join(filter(None, parts))
    return f"::{_COMMAND[finding.severity]} {told}::{_escaped(words, in_property=False)}"


def _escaped(text: str, *, in_property: bool) -> str:
    pairs = [("%", "%25"), ("\r", "%0D"), ("\n", "%0A")]
    if in_property:
        pairs += [(":", "%3A"), (",", "%2C")]
    for character, code in pairs:
        text = text.replace(character, code)
    return text
