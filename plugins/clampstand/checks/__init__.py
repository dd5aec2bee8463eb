"""The catalogue of rules, and how they are run over a book."""

from clampstand.checks.exposure import (
    carbon_dioxide_in_room,
    concentration_for_pupils,
    forceps_too_short,
    hand_to_source_distance,
    handling_age,
    laser_class,
    no_limit_in_force,
    no_sealed_container,
    people_to_live_distance,
    room_for_gas,
    sealed_only,
    series_resistance,
    source_activity_cap,
    stored_charge,
    stored_energy,
    supply_current,
    supply_described,
    supply_voltage,
    time_out,
    watchers_distance,
)
from clampstand.checks.numbers import (
    one_distance,
    prose_agrees,
)
from clampstand.checks.planning import (
    leak_test_due,
    leak_test_interval,
    source_dates,
    source_past_working_life,
    source_status,
    steps_fit_the_lesson,
    supply_test_interval,
    supply_tested,
)
from clampstand.checks.rule import Lesson, Rule, RulePage, rule_of
from clampstand.checks.sequence import (
    discharge_wait,
    discharged_before_touch,
    discharged_safely,
    distances_declared,
    no_vapour_with_flame,
    one_source_out,
    protection_worn,
    source_held_with_tool,
    source_in_its_place,
    source_returned,
    source_signed_out_first,
    supply_left_on,
)

RULES: tuple[Rule, ...] = tuple(
    rule_of(module)
    for module in (
        # sequence
        discharge_wait,
        discharged_before_touch,
        discharged_safely,
        distances_declared,
        no_vapour_with_flame,
        one_source_out,
        protection_worn,
        source_held_with_tool,
        source_in_its_place,
        source_returned,
        source_signed_out_first,
        supply_left_on,
        # exposure
        carbon_dioxide_in_room,
        concentration_for_pupils,
        forceps_too_short,
        hand_to_source_distance,
        handling_age,
        laser_class,
        no_limit_in_force,
        no_sealed_container,
        people_to_live_distance,
        room_for_gas,
        sealed_only,
        series_resistance,
        source_activity_cap,
        stored_charge,
        stored_energy,
        supply_current,
        supply_described,
        supply_voltage,
        time_out,
        watchers_distance,
        # numbers
        one_distance,
        prose_agrees,
        # planning
        leak_test_due,
        leak_test_interval,
        source_dates,
        source_past_working_life,
        source_status,
        steps_fit_the_lesson,
        supply_test_interval,
        supply_tested,
    )
)
"""Every rule, written out: tests/checks/test_catalogue.py compares the list with the folder."""

__all__ = ["RULES", "Lesson", "Rule", "RulePage"]
