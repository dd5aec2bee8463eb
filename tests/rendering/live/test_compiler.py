"""What the compiler of live formulae writes, and what it refuses."""

import re

import pytest

from clampstand.physics import counting, decay, electricity, room_air
from clampstand.rendering.live.compiler import NotLive, compiled, name_of, script_of
from clampstand.units import Quantity, Takes, formula
from rendering.live.bad_bodies import BAD, FORMULAE


@formula("", "x", true=Takes("", at_least=1), new=Takes("", at_least=1))
def reserved(true: Quantity, new: Quantity) -> Quantity:
    """Its arguments are words of JavaScript."""
    half = -(true**2) / 2
    return min(half, new, 3) if true - new > 1e-7 else max(-half, new)


def test_the_list_of_bad_bodies_is_whole():
    assert set(FORMULAE) == set(BAD)


@pytest.mark.parametrize("name", sorted(BAD))
def test_what_is_not_in_the_grammar_is_refused_with_its_name_and_reason(name: str):
    with pytest.raises(NotLive, match=re.escape(BAD[name])) as refused:
        script_of([FORMULAE[name]])
    assert str(refused.value).startswith(f"bad_bodies.{name}")


def test_a_body_keeps_its_order_of_operations():
    text, called = compiled(electricity.energy_stored)
    assert "return ((x_capacitance * Math.pow(x_voltage, 2.0)) / 2.0);" in text
    assert not called


def test_a_formula_called_by_another_is_written_once_and_before_it():
    script = script_of([room_air.fraction_in_closed_room, decay.activity_after, decay.share_left])
    assert script.count("function of_decay_share_left(") == 1
    assert script.index("function of_room_air_rise_in_closed_room(") < script.index(
        "function of_room_air_fraction_in_closed_room("
    )
    assert 'formulae["room_air.rise_in_closed_room"]' not in script
    assert 'formulae["decay.share_left"] = of_decay_share_left;' in script


def test_words_of_javascript_can_be_arguments():
    text, _ = compiled(reserved)
    assert "(x_true, x_new)" in text
    assert "((x_true - x_new) > 1e-07 ? Math.min(x_half, x_new, 3.0) : Math.max((-x_half), x_new))" in text


def test_parts_of_a_sum_may_have_names():
    assert "var x_slant = " in compiled(counting.window_share)[0]


def test_the_script_is_the_same_whatever_the_order():
    some = [electricity.charge_stored, decay.activity_after]
    assert script_of(some) == script_of(reversed(some))


def test_nothing_in_a_script_can_run_text():
    every = [f for module in (decay, electricity) for f in vars(module).values() if hasattr(f, "takes")]
    live = [f for f in every if name_of(f) not in _KEPT_OUT]
    assert not re.search(r"eval|Function\(|document|window\[", script_of(live))


_KEPT_OUT = {
    "decay.half_life_from_two",
    "decay.transient_equilibrium_ratio",
    "electricity.sphere_capacitance",
    "electricity.wire_resistance",
    "electricity.resistivity_of",
}
"""They refuse some arguments in their bodies, or name a constant of another module."""


def test_formulae_that_refuse_in_their_bodies_stay_in_python():
    with pytest.raises(NotLive, match="names given once"):
        compiled(decay.half_life_from_two)
