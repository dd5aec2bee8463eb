"""Findings as SARIF 2.1.0, the format of OASIS for the results of static analysis."""

import hashlib
import json
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from importlib.metadata import version
from typing import Any
from urllib.parse import quote

from clampstand.checks import Rule
from clampstand.findings import Finding, Place, Severity

SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
ROOT = "%SRCROOT%"
"""What stands for the root of the repository: no path of the machine gets into a report."""

_LEVEL = {Severity.STOP: "error", Severity.WARNING: "warning"}


def as_sarif(findings: Iterable[Finding], folder: str, rules: Sequence[Rule]) -> str:
    """Findings as a SARIF log with one run.

    Args:
        findings: what was found.
        folder: the content folder's path in the repository, put before each file.
        rules: the catalogue. Rules that only the reader knows are added where they were broken.
    """
    found = list(findings)
    known = [rule.id for rule in rules]
    others = sorted({finding.rule for finding in found} - set(known))
    index = {rule: number for number, rule in enumerate([*known, *others])}
    described = [*(_described(rule) for rule in rules), *({"id": rule} for rule in others)]
    run = {
        "tool": {"driver": {"name": "clampstand", "version": version("clampstand"), "rules": described}},
        "automationDetails": {"id": "clampstand/check/"},
        "originalUriBaseIds": {ROOT: {"description": {"text": "The root of the repository."}}},
        "columnKind": "unicodeCodePoints",
        "results": _results(found, folder, index),
    }
    log = {"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}
    return json.dumps(log, ensure_ascii=False, indent=2, sort_keys=True)


def _described(rule: Rule) -> dict[str, Any]:
    page = rule.page
    help_text = f"Wrong:\n{page.wrong}\n\nRight:\n{page.right}\n\nWhose: {page.whose}"
    marked = (
        f"Wrong:\n\n```yaml\n{page.wrong}\n```\n\nRight:\n\n```yaml\n{page.right}\n```\n\nWhose: {page.whose}"
    )
    return {
        "id": rule.id,
        "shortDescription": {"text": page.title},
        "fullDescription": {"text": page.why},
        "help": {"text": help_text, "markdown": marked},
        "defaultConfiguration": {"level": _LEVEL[rule.severity]},
        "properties": {"tags": [rule.family]},
    }


def _results(found: Sequence[Finding], folder: str, index: Mapping[str, int]) -> list[dict[str, Any]]:
    met: Counter[str] = Counter()
    results = []
    for finding in found:
        print_of = _fingerprint(finding)
        met[print_of] += 1
        results.append(
            {
                "ruleId": finding.rule,
                "ruleIndex": index[finding.rule],
                "level": _LEVEL[finding.severity],
                "message": {"text": _message(finding)},
                "locations": [_location(finding.place, folder)],
                "relatedLocations": [
                    {**_location(place, folder), "id": number, "message": {"text": words}}
                    for number, (place, words) in enumerate(finding.related, start=1)
                ],
                "partialFingerprints": {"clampstand/v1": f"{print_of}:{met[print_of]}"},
            }
        )
    return results


def _message(finding: Finding) -> str:
    whose = f"Whose: {finding.whose.layer} – {finding.whose.says}" if finding.whose else ""
    needed = f"Needed: {finding.needed}" if finding.needed else ""
    return "\n".join(filter(None, (finding.message, needed, whose, finding.mend)))


def _fingerprint(finding: Finding) -> str:
    """What tells a finding from others although lines move: a viewer then knows it is not new."""
    parts = (finding.rule, finding.subject, finding.place.file, finding.message)
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()[:16]


def _location(place: Place, folder: str) -> dict[str, Any]:
    uri = quote(f"{folder}/{place.file}" if folder else place.file)
    region = {
        "startLine": place.line,
        "startColumn": place.column,
        "endColumn": place.column + max(1, place.width),
    }
    return {"physicalLocation": {"artifactLocation": {"uri": uri, "uriBaseId": ROOT}, "region": region}}
