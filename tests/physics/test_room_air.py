"""CO2 in a room against a numerical solution, the conservation of gas, and the averages a person breathes."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from clampstand.physics import gas
from clampstand.physics import room_air as air
from clampstand.units import OutOfRange, bare, q, quantity
from physics.reference import substances

OUTDOOR = q("420 ppm")
ROOM = q("200 m³")
RELEASES = st.floats(min_value=0, max_value=1e-3)
CHANGES = st.floats(min_value=0, max_value=5e-3)
TIMES = st.floats(min_value=1, max_value=3e4)
STARTS = st.floats(min_value=0, max_value=0.05)


def after(start: float, release: float, changes: float, time: float, formula=air.fraction_after) -> float:
    return formula(
        quantity(start, ""),
        OUTDOOR,
        quantity(release, "m**3/s"),
        ROOM,
        quantity(changes, "1/s"),
        quantity(time, "s"),
    ).m_as("")


@pytest.mark.parametrize("changes", [0.0, 1e-9, 1e-6, 5.6e-4, 5e-3])
def test_room_agrees_with_the_balance_solved_step_by_step(changes: float) -> None:
    start, release, time = 0.01, 1.5e-4, 5400.0
    ran = solve_ivp(
        lambda _, x: release / 200 - changes * (x - 420e-6), (0, time), [start], rtol=1e-11, atol=1e-14
    )
    assert after(start, release, changes, time) == pytest.approx(ran.y[0, -1], rel=1e-7)


@given(start=STARTS, release=RELEASES, changes=CHANGES, time=TIMES)
def test_mean_is_the_integral_over_the_time(
    start: float, release: float, changes: float, time: float
) -> None:
    total, _ = quad(lambda t: after(start, release, changes, t), 0, time, epsrel=1e-9, limit=200)
    assert after(start, release, changes, time, air.mean_fraction) == pytest.approx(total / time, rel=1e-6)


@pytest.mark.parametrize("product", [1e-8, 9.9e-8, 1.01e-7, 1e-5, 9.9e-5, 1.01e-4, 1e-3])
def test_small_air_changes_lose_no_figures(product: float) -> None:
    """Both forms of the formulae against ones that math.expm1 keeps exact, each side of where they change."""
    time = 1e4
    for start, release in ((0.02, 0.0), (420e-6, 1e-4)):
        falls = -math.expm1(-product) / product
        shut_rise = release * time / 200
        settled = 420e-6 + (start - 420e-6) * math.exp(-product) + shut_rise * falls
        assert after(start, release, product / time, time) == pytest.approx(settled, rel=2e-7)
        rising = shut_rise * (1 / 2 - product / 6 + product**2 / 24)
        mean = 420e-6 + (start - 420e-6) * falls + rising
        assert after(start, release, product / time, time, air.mean_fraction) == pytest.approx(mean, rel=2e-7)


@given(start=STARTS, release=RELEASES, changes=CHANGES, time=TIMES)
def test_gas_is_conserved(start: float, release: float, changes: float, time: float) -> None:
    """What the room gains is what was released less what the ventilation carried out."""
    gained = (after(start, release, changes, time) - start) * 200
    carried = changes * 200 * (after(start, release, changes, time, air.mean_fraction) - 420e-6) * time
    assert gained == pytest.approx(release * time - carried, rel=1e-6, abs=1e-9)


@given(release=st.floats(min_value=1e-6, max_value=1e-3), changes=st.floats(min_value=1e-5, max_value=5e-3))
def test_after_long_the_room_is_steady_and_never_above(release: float, changes: float) -> None:
    steady = air.steady_fraction(OUTDOOR, quantity(release, "m**3/s"), ROOM, quantity(changes, "1/s")).m_as(
        ""
    )
    assume(steady < 1)
    assert after(420e-6, release, changes, 40 / changes) == pytest.approx(steady)
    assert after(420e-6, release, changes, 1 / changes) <= steady


@given(changes=CHANGES, time=TIMES)
def test_more_ventilation_or_more_room_never_means_more_gas(changes: float, time: float) -> None:
    assert after(420e-6, 1e-4, changes + 1e-4, time) <= after(420e-6, 1e-4, changes, time) * (1 + 1e-9)


def test_closed_room_is_simple_dilution() -> None:
    """Three kilograms in 30 m³, worked out beside the code with CoolProp's density: 54 367 ppm."""
    density = gas.carbon_dioxide_density(q("20 °C"))
    rise = air.rise_in_closed_room(q("3 kg"), density, q("30 m³"))
    assert rise.m_as("ppm") == pytest.approx(54367, rel=1e-3)
    by_time = after(0.0, 3 / density.m_as("kg/m**3") / 3600, 0.0, 3600.0)
    assert by_time * 200 / 30 == pytest.approx(rise.m_as(""))


@given(limit=st.floats(min_value=1e-3, max_value=0.05), cubic_metres=st.floats(min_value=1, max_value=1000))
def test_greatest_mass_just_reaches_the_limit(limit: float, cubic_metres: float) -> None:
    room, density = quantity(cubic_metres, "m**3"), q("1.839 kg/m³")
    mass = air.greatest_mass_for_limit(quantity(limit, ""), OUTDOOR, density, room)
    rise = air.rise_in_closed_room(mass, density, room)
    assert (OUTDOOR + rise).m_as("") == pytest.approx(limit)


def test_a_room_over_the_limit_has_room_for_nothing() -> None:
    assert air.greatest_mass_for_limit(q("400 ppm"), OUTDOOR, q("1.8 kg/m³"), ROOM).m_as("kg") == 0


def test_time_to_clear_is_the_time_after_which_it_is_clear() -> None:
    time = air.time_to_clear(q("2 %"), q("4580 ppm"), quantity(2, "1/h"))
    assert after(0.02 + 420e-6, 0, 2 / 3600, time.m_as("s")) == pytest.approx(5000e-6)


def test_an_oxygen_alarm_does_not_guard_against_carbon_dioxide() -> None:
    assert air.oxygen_left(q("15000 ppm")).m_as("percent") == pytest.approx(20.64, abs=0.005)
    alarm = q("19.5 %")
    needed = (1 - alarm / air.OXYGEN_IN_AIR).m_as("ppm")
    assert needed == pytest.approx(69_000, rel=0.01)
    assert air.oxygen_left(quantity(needed, "ppm")).m_as("percent") == pytest.approx(19.5)


def test_thirty_two_people_alone_pass_a_thousand_ppm_in_a_shut_laboratory() -> None:
    each = substances()["carbon-dioxide"].quantity("exhaled-rate")
    release = air.breath_release(bare(32), each).m_as("m**3/s")
    assert after(420e-6, release, 0, 3600) == pytest.approx(420e-6 + 32 * 0.018 / 200)


def lesson(minutes: float, airing: float, changes: float) -> air.RoomHistory:
    rate = quantity(changes, "1/h")
    parts = (
        air.Stretch(quantity(minutes, "min"), quantity(0.5437, "m**3/h"), rate),
        air.Stretch(quantity(airing, "min"), quantity(0, "m**3/h"), rate),
    )
    return air.RoomHistory(ROOM, OUTDOOR, OUTDOOR, parts)


@given(
    minutes=st.floats(min_value=16, max_value=120),
    changes=st.floats(min_value=0.1, max_value=10),
)
def test_greatest_quarter_hour_agrees_with_its_closed_form(minutes: float, changes: float) -> None:
    """For one steady release of length D the best window begins where the level equals that at its end."""
    d, tau = minutes / 60, 0.25
    begin = math.log(1 + (math.exp(changes * d) - 1) * math.exp(-changes * tau)) / changes
    steady = 0.5437 / (200 * changes)
    rising = (d - begin) - (math.exp(-changes * begin) - math.exp(-changes * d)) / changes
    peak = 1 - math.exp(-changes * d)
    falling = peak * (1 - math.exp(-changes * (begin + tau - d))) / changes
    expected = 420e-6 + steady * (rising + falling) / tau
    found = lesson(minutes, 60, changes).greatest_mean(q("15 min")).m_as("")
    assert found == pytest.approx(expected, rel=1e-4)


@given(minutes=st.floats(min_value=1, max_value=120), changes=st.floats(min_value=0, max_value=10))
def test_no_average_is_above_the_peak_and_longer_ones_are_lower(minutes: float, changes: float) -> None:
    history = lesson(minutes, 60, changes)
    quarter, day = (history.greatest_mean(q(window)).m_as("") for window in ("15 min", "8 h"))
    assert day <= quarter * (1 + 1e-9)
    assert quarter <= history.peak().m_as("") * (1 + 1e-9)


def test_eight_hours_include_the_hours_outdoors() -> None:
    history = lesson(60, 0.001, 0)
    rise = 0.5437 / 200
    assert history.greatest_mean(q("8 h")).m_as("") == pytest.approx(420e-6 + rise / 2 / 8, rel=1e-3)


def test_a_history_of_halves_is_the_history_of_the_whole() -> None:
    half = air.Stretch(q("30 min"), quantity(0.5437, "m**3/h"), quantity(2, "1/h"))
    whole = air.Stretch(q("60 min"), quantity(0.5437, "m**3/h"), quantity(2, "1/h"))
    of_halves = air.RoomHistory(ROOM, OUTDOOR, OUTDOOR, (half, half))
    of_whole = air.RoomHistory(ROOM, OUTDOOR, OUTDOOR, (whole,))
    assert of_halves.peak().m_as("") == pytest.approx(of_whole.peak().m_as(""))
    span = q("10 min"), q("50 min")
    assert of_halves.mean(*span).m_as("") == pytest.approx(of_whole.mean(*span).m_as(""))


@pytest.mark.parametrize(("begin", "end"), [("10 min", "10 min"), ("10 min", "5 min"), ("-1 s", "5 min")])
def test_an_average_over_no_time_is_refused(begin: str, end: str) -> None:
    with pytest.raises(OutOfRange):
        lesson(30, 30, 2).mean(q(begin), q(end))
    with pytest.raises(OutOfRange):
        lesson(30, 30, 2).greatest_mean(q("0 s"))


def test_a_flow_and_a_room_give_the_air_changes() -> None:
    assert air.air_changes_of(q("400 m³/h"), ROOM).m_as("1/h") == pytest.approx(2)
