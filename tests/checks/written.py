"""The cases as they are written, and what is found in each wrong one."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import yaml

from checks.edits import Plain, bench, edited, judged
from clampstand.checks import RULES
from clampstand.findings import Finding

CASES = Path(__file__).parent / "cases"
BENCH = bench()


@dataclass(frozen=True, eq=False)
class Case:
    """A wrong edit, words that must be said about it, and an edit nearly the same that is allowed."""

    rule: str
    number: int
    wrong: dict[str, Plain]
    says: tuple[str, ...]
    twin: dict[str, Plain]

    def __str__(self) -> str:
        return f"{self.rule}-{self.number}"


def cases_of(rule: str) -> Iterator[Case]:
    """The cases written for a rule."""
    path = CASES / f"{rule}.yml"
    written = yaml.load(path.read_text(), yaml.CBaseLoader) if path.exists() else []
    for number, case in enumerate(written, start=1):
        assert set(case) == {"wrong", "says", "twin"}, f"{path.name}, case {number}"
        assert all((case["wrong"], case["says"])), f"{path.name}, case {number}"
        yield Case(rule, number, case["wrong"], tuple(case["says"]), case["twin"])


ALL = [case for rule in RULES for case in cases_of(rule.id)]


@cache
def found_in_wrong(case: Case) -> tuple[Finding, ...]:
    """What is found in the wrong edit of a case, judged once for all tests that ask."""
    with TemporaryDirectory() as folder:
        return judged(edited(BENCH, case.wrong), Path(folder)).findings
