"""Findings as JSON, for programs; DEVELOPERS.md lists the keys and what is promised of them."""

import json
from collections.abc import Iterable
from typing import Any

from clampstand.findings import Finding

JSON_VERSION = 1
"""Goes up when a key goes or changes its meaning; a new key alone does not raise it."""


def as_json(findings: Iterable[Finding]) -> str:
    """Findings as JSON; every key is always there, and empty where there is nothing to say.

    Keys are sorted and findings stand in their one order, so that equal content gives equal bytes.
    """
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
