"""Every rule meets wrong edits with their nearest legal neighbours, and says what is the matter."""

from collections.abc import Sequence
from pathlib import Path

import pytest

from checks.edits import edited, judged
from checks.written import ALL, BENCH, CASES, Case, cases_of, found_in_wrong
from clampstand.checks import RULES
from clampstand.findings import Finding, Severity

FEWEST = 3


def words_of(finding: Finding) -> str:
    """Everything a finding says, on one line, with spaces that are only spaces."""
    whose = finding.whose.says if finding.whose else ""
    related = "; ".join(words for _, words in finding.related)
    said = " | ".join((finding.message, finding.found, finding.needed, finding.mend, whose, related))
    return said.replace("\u00a0", " ").replace("\u202f", " ")


def is_excused(finding: Finding) -> bool:
    """Whether an exception allows it, and only says so."""
    return finding.severity is Severity.WARNING and "(allowed until " in finding.message


def unexcused(findings: Sequence[Finding], rule: str = "") -> list[Finding]:
    """The findings that count against an edit: no allowed exceptions, and no echo from the timetable.

    What an edit does to lessons planned with the definition is told at those lessons as well, and rightly. It
    is left out of account unless the rule in question speaks of lessons itself.
    """
    count = [finding for finding in findings if not is_excused(finding)]
    of_lessons = any(f.rule == rule and f.place.file.startswith("timetable/") for f in count)
    return [f for f in count if of_lessons or f.rule == rule or not f.place.file.startswith("timetable/")]


@pytest.mark.parametrize("rule", [rule.id for rule in RULES])
def test_every_rule_has_cases(rule: str) -> None:
    assert len(list(cases_of(rule))) >= FEWEST


def test_every_file_of_cases_belongs_to_a_rule() -> None:
    assert {path.stem for path in CASES.glob("*")} <= {rule.id for rule in RULES}


@pytest.mark.parametrize("case", ALL, ids=str)
def test_a_wrong_edit_is_found_and_named(case: Case) -> None:
    findings = found_in_wrong(case)
    assert {finding.rule for finding in unexcused(findings, case.rule)} == {case.rule}, findings
    said = "\n".join(words_of(finding) for finding in findings)
    for words in case.says:
        assert words in said, said
    for finding in findings:
        assert all((finding.message, finding.needed, finding.mend, finding.whose, finding.subject)), finding
        assert finding.place.file in edited(BENCH, case.wrong)


@pytest.mark.parametrize("case", ALL, ids=str)
def test_its_legal_twin_is_clean(case: Case, tmp_path: Path) -> None:
    assert case.twin != case.wrong
    findings = judged(edited(BENCH, case.twin), tmp_path).findings
    assert [words_of(finding) for finding in unexcused(findings, case.rule)] == []
