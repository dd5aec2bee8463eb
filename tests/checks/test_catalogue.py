"""The catalogue of rules is complete, and every rule has its page."""

from pathlib import Path

import pytest

import clampstand.checks
from clampstand.checks import RULES, Rule

FAMILIES = ("sequence", "exposure", "numbers", "planning")
ROOM = Path(clampstand.checks.__file__).parent
ALL = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)


def test_every_rule_file_is_listed() -> None:
    written = {(family, path.stem) for family in FAMILIES for path in (ROOM / family).glob("[!_]*.py")}
    assert written == {(rule.family, rule.id.replace("-", "_")) for rule in RULES}


def test_no_rule_is_listed_twice() -> None:
    assert len({rule.id for rule in RULES}) == len(RULES)


@ALL
def test_a_rule_judges_something(rule: Rule) -> None:
    assert rule.check is not None or rule.check_book is not None


@ALL
def test_a_rule_has_a_page(rule: Rule) -> None:
    page = rule.page
    assert page.title.endswith(".")
    assert all((page.why, page.wrong, page.right, page.whose))
    assert page.wrong != page.right


@ALL
def test_a_rule_file_stays_short(rule: Rule) -> None:
    path = ROOM / rule.family / f"{rule.id.replace('-', '_')}.py"
    assert len(path.read_text().splitlines()) <= 120
