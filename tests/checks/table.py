"""The table of all rules with their cases; run with tests on the path, it rewrites TABLE.md."""

from pathlib import Path

from checks.written import cases_of
from clampstand.checks import RULES

TABLE = Path(__file__).with_name("TABLE.md")
HEAD = """\
# Rules and their cases

Each case is a wrong edit of the bench that its rule alone must find, with a legal twin that must be clean.
`test_cases.py` holds every one of them, once more under other names in `test_renaming.py`. Each rule's page
has one case more. Written by `table.py`.

| family | rule | severity | wrong edits caught | legal twins let through |
|---|---|---|---:|---:|
"""


def table() -> str:
    """The table as Markdown."""
    rows, total = [], 0
    for rule in RULES:
        number = len(list(cases_of(rule.id)))
        total += number
        rows.append(f"| {rule.family} | {rule.id} | {rule.severity.value} | {number} | {number} |\n")
    return f"{HEAD}{''.join(rows)}| | **{len(RULES)} rules** | | {total} | {total} |\n"


if __name__ == "__main__":
    TABLE.write_text(table(), encoding="utf-8")
