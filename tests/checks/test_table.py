"""The committed table of rules and cases is of today."""

from checks.table import TABLE, table


def test_the_table_is_of_today() -> None:
    written = TABLE.read_text(encoding="utf-8")
    assert written == table(), "write it anew: PYTHONPATH=tests python tests/checks/table.py"
