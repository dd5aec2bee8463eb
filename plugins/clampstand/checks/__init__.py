"""The catalogue of rules, and how they are run over a book."""

from clampstand.checks.exposure import hand_to_source_distance
from clampstand.checks.rule import Lesson, Rule, RulePage, rule_of
from clampstand.checks.sequence import source_returned

RULES: tuple[Rule, ...] = tuple(
    rule_of(module)
    for module in (
        # sequence
        source_returned,
        # exposure
        hand_to_source_distance,
    )
)
"""Every rule, written out: tests/checks/test_catalogue.py compares the list with the folder."""

__all__ = ["RULES", "Lesson", "Rule", "RulePage"]
