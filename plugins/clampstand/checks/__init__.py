"""The catalogue of rules, and how they are run over a book."""

from clampstand.checks.exposure import (
    carbon_dioxide_in_room,
    hand_to_source_distance,
    no_sealed_container,
    room_for_gas,
)
from clampstand.checks.numbers import prose_agrees
from clampstand.checks.planning import steps_fit_the_lesson
from clampstand.checks.rule import Lesson, Rule, RulePage, rule_of
from clampstand.checks.sequence import no_vapour_with_flame, protection_worn, source_returned

RULES: tuple[Rule, ...] = tuple(
    rule_of(module)
    for module in (
        # sequence
        no_vapour_with_flame,
        protection_worn,
        source_returned,
        # exposure
        carbon_dioxide_in_room,
        hand_to_source_distance,
        no_sealed_container,
        room_for_gas,
        # numbers
        prose_agrees,
        # planning
        steps_fit_the_lesson,
    )
)
"""Every rule, written out: tests/checks/test_catalogue.py compares the list with the folder."""

__all__ = ["RULES", "Lesson", "Rule", "RulePage"]
