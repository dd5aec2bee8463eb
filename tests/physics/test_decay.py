"""Decay of one nuclide and of pairs: against radioactivedecay, by its laws, and past the usual slips."""

import math

import numpy as np
import pytest
import radioactivedecay as rd
from hypothesis import given
from hypothesis import strategies as st

from clampstand.physics import decay
from clampstand.units import OutOfRange, Quantity, q, quantity
from physics.reference import nuclides

DAYS_OF_LIBRARY_YEAR = 365.2422
seconds = st.floats(1e-3, 1e17)


@pytest.mark.parametrize("name", nuclides())
@pytest.mark.parametrize("half_lives", [0.1, 1, 7])
def test_activity_later_agrees_with_radioactivedecay(name: str, half_lives: float) -> None:
    ours = nuclides()[name].half_life.value.value
    elapsed = half_lives * ours
    theirs = rd.Inventory({name: 1000.0}, "Bq").decay(float(elapsed.m_as("s")), "s").activities("Bq")[name]
    assert decay.activity_after(q("1000 Bq"), ours, elapsed).m_as("Bq") == pytest.approx(theirs, rel=1e-3)


@pytest.mark.parametrize("name", nuclides())
def test_specific_activity_agrees_with_radioactivedecay(name: str) -> None:
    nuclide = nuclides()[name]
    ours = decay.specific_activity(nuclide.half_life.value.value, nuclide.molar_mass.value).m_as("Bq/g")
    theirs = rd.Inventory({name: 1.0}, "g").activities("Bq")[name]
    assert ours == pytest.approx(theirs, rel=1e-3)


@given(seconds, st.floats(0, 20), st.floats(0, 20))
def test_waiting_twice_is_waiting_once_for_both(half_life: float, first: float, second: float) -> None:
    t_half, start = quantity(half_life, "s"), quantity(1000, "Bq")
    in_two = decay.activity_after(
        decay.activity_after(start, t_half, first * t_half), t_half, second * t_half
    )
    in_one = decay.activity_after(start, t_half, (first + second) * t_half)
    assert in_two.magnitude == pytest.approx(in_one.magnitude, rel=1e-9)


@given(seconds, st.floats(0, 1e15), st.floats(0, 1e3))
def test_mass_and_specific_activity_undo_each_other(half_life: float, activity: float, mass: float) -> None:
    t_half, molar_mass = quantity(half_life, "s"), quantity(mass + 1, "g/mol")
    m = decay.mass_for_activity(quantity(activity, "Bq"), t_half, molar_mass)
    assert (m * decay.specific_activity(t_half, molar_mass)).m_as("Bq") == pytest.approx(activity, rel=1e-12)


def test_a_time_before_the_reference_date_is_refused() -> None:
    with pytest.raises(OutOfRange, match="elapsed"):
        decay.activity_after(q("185 kBq"), q("30 years"), quantity(-1, "day"))


def test_half_life_is_not_mean_life() -> None:
    """Taken as a mean life, ten years leave 27.7 kBq of 185 kBq of cobalt-60; it is 49.7 kBq."""
    cobalt = nuclides()["Co-60"].half_life.value.value
    left = decay.activity_after(q("185 kBq"), cobalt, q("10 years")).m_as("kBq")
    assert left == pytest.approx(49.7, abs=0.05)
    assert left != pytest.approx(27.7, rel=0.1)
    assert (decay.mean_life(cobalt) / cobalt).m_as("") == pytest.approx(1.4427, abs=1e-4)


def test_five_microcuries_are_185_kilobecquerels() -> None:
    assert q("5 µCi").m_as("kBq") == pytest.approx(185)
    assert q("370 kBq").m_as("uCi") == pytest.approx(10)


def greatest_by_search(parent: float, daughter: float) -> float:
    slow, fast = math.log(2) / parent, math.log(2) / daughter
    times = np.linspace(0, 12 * max(parent, daughter), 400_001)[1:]
    return float(times[np.argmax(np.exp(-slow * times) - np.exp(-fast * times))])


@pytest.mark.parametrize(("parent", "daughter"), [(38304, 3633), (1608, 1194), (100, 900)])
def test_time_of_greatest_daughter_is_where_a_search_finds_it(parent: float, daughter: float) -> None:
    ours = decay.time_of_greatest_daughter(quantity(parent, "s"), quantity(daughter, "s")).m_as("s")
    if parent < daughter:
        slow, fast = math.log(2) / daughter, math.log(2) / parent
        assert ours == pytest.approx(math.log(fast / slow) / (fast - slow), rel=1e-9)
    else:
        assert ours == pytest.approx(greatest_by_search(parent, daughter), rel=1e-3)


@given(seconds, st.floats(-1e-9, 1e-9))
def test_time_of_greatest_daughter_of_near_equals_is_the_mean_life(half_life: float, apart: float) -> None:
    t = decay.time_of_greatest_daughter(quantity(half_life, "s"), quantity(half_life * (1 + apart), "s"))
    assert t.m_as("s") == pytest.approx(half_life / math.log(2), rel=1e-6)


def test_secular_equilibrium_needs_a_long_lived_parent() -> None:
    with pytest.raises(OutOfRange, match="hundred"):
        decay.secular_equilibrium_activity(q("1 kBq"), q("10.64 h"), q("60.55 min"), quantity(1, ""))
    with pytest.raises(OutOfRange, match="branching"):
        decay.secular_equilibrium_activity(q("1 kBq"), q("30 years"), q("2.552 min"), quantity(1.2, ""))


def readings(sizes: list[float]) -> list[Quantity]:
    return [quantity(size, "Bq") for size in sizes]


def test_fitted_half_life_agrees_with_numpy() -> None:
    ts, sizes = [0, 300, 600, 900, 1200], [125.2, 118.0, 110.1, 101.9, 95.0]
    slope = np.polyfit(ts, np.log(sizes), 1)[0]
    ours = decay.fitted_half_life([quantity(t, "s") for t in ts], readings(sizes))
    assert ours.m_as("s") == pytest.approx(-math.log(2) / slope, rel=1e-9)


@pytest.mark.parametrize("sizes", [[1.0], [2.0, 0.0], [1.0, 2.0], []])
def test_a_fit_of_too_little_or_of_a_rise_is_refused(sizes: list[float]) -> None:
    with pytest.raises(OutOfRange):
        decay.fitted_half_life([quantity(t, "s") for t in range(len(sizes))], readings(sizes))
