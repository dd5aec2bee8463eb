"""The examples on every rule's page: the wrong one is found by that rule alone, the right one is clean."""

from pathlib import Path

import pytest

from checks.edits import bench, edited, judged, plain
from checks.test_cases import unexcused
from clampstand.checks import RULES, Rule

BENCH = bench()
RULES_BY_ID = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)


@RULES_BY_ID
def test_the_wrong_example_is_found(rule: Rule, tmp_path: Path) -> None:
    findings = unexcused(judged(edited(BENCH, plain(rule.page.wrong)), tmp_path).findings, rule.id)
    assert {finding.rule for finding in findings} == {rule.id}, findings
    assert {finding.severity for finding in findings} == {rule.severity}


@RULES_BY_ID
def test_the_right_example_is_clean(rule: Rule, tmp_path: Path) -> None:
    findings = judged(edited(BENCH, plain(rule.page.right)), tmp_path).findings
    assert unexcused(findings, rule.id) == []
