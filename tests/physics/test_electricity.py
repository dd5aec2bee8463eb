"""Electricity against CODATA, a numerical discharge, and the slips people make with it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants
from scipy.integrate import solve_ivp

from clampstand.physics import electricity as el
from clampstand.units import bare, q, quantity

SOME = st.floats(min_value=1e-3, max_value=1e3)


def test_permittivity_is_that_of_codata() -> None:
    assert el.VACUUM_PERMITTIVITY.m_as("F/m") == pytest.approx(constants.epsilon_0, rel=1e-9)


def test_discharge_agrees_with_a_numerical_solution() -> None:
    ran = solve_ivp(lambda _, v: -v / (1e3 * 0.01), (0, 25), [25.0], rtol=1e-10, atol=1e-12)
    left = el.voltage_left(q("25 V"), q("1 kΩ"), q("10 mF"), q("25 s"))
    assert left.m_as("V") == pytest.approx(ran.y[0, -1], rel=1e-7)


@given(start=st.floats(min_value=1.1, max_value=1e4), safe=st.floats(min_value=0.1, max_value=1))
def test_after_the_discharge_time_the_safe_voltage_is_left(start: float, safe: float) -> None:
    resistance, capacitance = q("10 MΩ"), q("10 nF")
    time = el.discharge_time(quantity(start, "V"), quantity(safe, "V"), resistance, capacitance)
    left = el.voltage_left(quantity(start, "V"), resistance, capacitance, time)
    assert left.m_as("V") == pytest.approx(safe)


def test_a_voltage_that_is_safe_already_needs_no_time() -> None:
    assert el.discharge_time(q("50 V"), q("60 V"), q("1 MΩ"), q("1 µF")) == q("0 s")


@given(capacitance=SOME, voltage=SOME)
def test_energy_of_the_charge_is_the_energy_of_the_capacitor(capacitance: float, voltage: float) -> None:
    c, v = quantity(capacitance, "nF"), quantity(voltage, "kV")
    assert el.energy_of_charge(el.charge_stored(c, v), v).m_as("J") == pytest.approx(
        el.energy_stored(c, v).m_as("J")
    )
    assert el.energy_stored(c, v * 2).m_as("J") == pytest.approx(4 * el.energy_stored(c, v).m_as("J"))


def test_fifty_megohms_let_a_tenth_of_a_milliampere_and_not_a_hundred() -> None:
    assert el.current_through(q("5 kV"), q("50 MΩ")).m_as("mA") == pytest.approx(0.1)


@given(load=SOME)
def test_a_load_never_takes_more_than_the_short_circuit(load: float) -> None:
    short = el.current_through(q("5 kV"), q("50 MΩ"))
    assert el.current_through(q("5 kV"), q("50 MΩ"), quantity(load, "Mohm")) < short


def test_thirty_volts_rms_is_not_thirty_volts_peak() -> None:
    assert el.peak_of(q("30 V")).m_as("V") == pytest.approx(42.4, abs=0.05)
    assert el.rms_of(el.peak_of(q("230 V"))).m_as("V") == pytest.approx(230)


def test_power_two_ways_is_one_power() -> None:
    current = el.current_through(q("12 V"), q("3 Ω"))
    assert el.power_of(q("12 V"), current).m_as("W") == pytest.approx(
        el.power_in(q("3 Ω"), q("12 V")).m_as("W")
    )
    assert el.voltage_drop(current, q("3 Ω")).m_as("V") == pytest.approx(12)


def test_a_sphere_s_voltage_is_that_of_its_charge_at_its_middle() -> None:
    coulomb = 1 / (4 * constants.pi * constants.epsilon_0)
    charge = el.charge_stored(el.sphere_capacitance(q("0.1 m")), q("300 kV"))
    assert coulomb * charge.m_as("C") / 0.1 == pytest.approx(300e3)


def test_dome_holds_what_its_capacitance_holds_at_breakdown() -> None:
    charge, energy = el.dome_greatest_charge(q("0.1 m")), el.dome_greatest_energy(q("0.1 m"))
    assert energy.m_as("J") == pytest.approx(charge.m_as("C") * 300e3 / 2)
    assert el.dome_greatest_energy(q("0.2 m")).m_as("J") == pytest.approx(8 * energy.m_as("J"))


def test_wire_of_constantan_as_a_maker_s_table_has_it() -> None:
    """CRC wire tables, B & S gauge 6: 4.115 mm, copper of 1.678e-8 Ω m is 0.00126 Ω/m."""
    each = el.wire_resistance(q("1.678e-8 Ω m"), q("1 m"), q("4.115 mm"))
    assert each.m_as("ohm") == pytest.approx(0.00126, rel=0.005)
    assert el.resistivity_of(each, q("1 m"), q("4.115 mm")).m_as("ohm*m") == pytest.approx(1.678e-8)


def test_plates_hold_more_with_a_dielectric_between() -> None:
    in_air = el.plates_capacitance(q("400 cm²"), q("5 mm"))
    assert el.plates_capacitance(q("400 cm²"), q("5 mm"), bare(2.2)).m_as("F") == pytest.approx(
        2.2 * in_air.m_as("F")
    )
