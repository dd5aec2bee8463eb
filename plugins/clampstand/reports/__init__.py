"""Findings as a person reads them in a terminal, as JSON, as notes on a pull request, and as SARIF."""

from clampstand.reports.github import as_github
from clampstand.reports.json import as_json
from clampstand.reports.sarif import as_sarif
from clampstand.reports.text import as_text, one_as_text, tally

__all__ = ["as_github", "as_json", "as_sarif", "as_text", "one_as_text", "tally"]
