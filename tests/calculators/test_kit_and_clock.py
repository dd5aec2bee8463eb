"""Totals of the kit and the running clock."""

import pytest

import tiny
from clampstand.calculators.clock import clock
from clampstand.calculators.kit_totals import kit_totals, mass_in_room
from clampstand.units import q


@pytest.mark.parametrize(
    ("per", "count", "spare", "class_size", "total"),
    [
        ("class", "1", "0", 30, 1),
        ("group", "1", "1", 30, 11),
        ("group", "2", "0", 31, 22),
        ("pair", "1", "0", 31, 16),
        ("pupil", "1", "2", 30, 32),
        ("adult", "1", "0", 30, 1),
    ],
)
def test_totals_round_up_to_whole_sets(book, per, count, spare, class_size, total):
    practical = tiny.practical(kit=[{"item": "forceps", "per": per, "count": count, "spare": spare}])
    (found,) = kit_totals(practical, book, class_size)
    assert found.count == total


def test_a_material_is_the_whole_class_sum_and_its_allowance_may_wait_elsewhere(book):
    line = {"item": "dry-ice", "per": "group", "amount": "0.4 kg", "allowance": "0.8 kg"}
    inside = tiny.practical(kit=[line], groups_of="5")
    outside = tiny.practical(kit=[line | {"allowance_kept": "R4"}], groups_of="5")
    assert mass_in_room("dry-ice", inside, book).m_as("kg") == pytest.approx(3.2)
    assert mass_in_room("dry-ice", outside, book).m_as("kg") == pytest.approx(2.4)
    assert mass_in_room("salt", inside, book) is None


def test_the_clock_adds_each_step_at_its_longest():
    steps = (tiny.step(takes="90 s"), tiny.step(takes="1 min to 2 min"), tiny.step(takes="3 min"))
    first, second, third = clock(steps)
    assert (first.begins, second.begins.to("min"), third.begins.to("min")) == (
        q("0 min"),
        q("1.5 min"),
        q("3.5 min"),
    )
    assert third.ends.m_as("min") == pytest.approx(6.5)
