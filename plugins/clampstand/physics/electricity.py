"""Charge, energy and current in high-voltage apparatus.

Constants are CODATA 2022 values (tests compare them with ``scipy.constants``).
"""

import math

from clampstand.units import Quantity, Takes, exp, formula, ln, quantity

VACUUM_PERMITTIVITY = quantity(8.8541878188e-12, "F/m")
AIR_BREAKDOWN_FIELD = quantity(3e6, "V/m")
SHORT_CIRCUIT = quantity(0, "ohm")
OF_VACUUM = quantity(1, "")

_VOLTAGE = Takes("V", at_least=0)
_SOME_VOLTAGE = Takes("V", more_than=0)
_CAPACITANCE = Takes("F", more_than=0)
_RESISTANCE = Takes("ohm", more_than=0)
_CURRENT = Takes("A", at_least=0)
_SIZE = Takes("m", more_than=0)
_PERMITTIVITY = Takes("F/m", more_than=0)


@formula("C", "Q = C·V", capacitance=_CAPACITANCE, voltage=_VOLTAGE)
def charge_stored(capacitance: Quantity, voltage: Quantity) -> Quantity:
    """Charge on a capacitor, ``Q = C·V`` (C in farads, V in volts, Q in coulombs), for a linear dielectric.

    Source: definition of capacitance (IEC 60050-131-12-13).

    >>> f"{charge_stored(quantity(10, 'nF'), quantity(5, 'kV')).to('uC'):.4g~P}"
    '50 uC'
    """
    return capacitance * voltage


@formula("F", "C = Q/V", charge=Takes("C", at_least=0), voltage=_SOME_VOLTAGE)
def capacitance_holding(charge: Quantity, voltage: Quantity) -> Quantity:
    """Capacitance that holds a charge at a voltage, ``C = Q/V``.

    Q in coulombs, V in volts, C in farads. With a limit of charge this is the greatest allowed.
    For a linear dielectric. Source: definition of capacitance.

    >>> f"{capacitance_holding(quantity(45, 'uC'), quantity(5, 'kV')).to('nF'):.4g~P}"
    '9 nF'
    """
    return charge / voltage


@formula("J", "E = C·V²/2", capacitance=_CAPACITANCE, voltage=_VOLTAGE)
def energy_stored(capacitance: Quantity, voltage: Quantity) -> Quantity:
    """Energy in a charged capacitor, ``E = C·V²/2`` (C in farads, V in volts, E in joules).

    For a linear dielectric. Source: work done in charging, ∫V dQ.

    >>> f"{energy_stored(quantity(10, 'nF'), quantity(5, 'kV')):.4g~P}"
    '0.125 J'
    """
    return capacitance * voltage**2 / 2


@formula("J", "E = Q·V/2", charge=Takes("C", at_least=0), voltage=_VOLTAGE)
def energy_of_charge(charge: Quantity, voltage: Quantity) -> Quantity:
    """Energy of a charge held at a voltage, ``E = Q·V/2`` (Q in coulombs, V in volts, E in joules).

    For a linear dielectric. The 45 µC and 350 mJ limits of touchable parts meet near 15 kV:

    >>> f"{energy_of_charge(quantity(45, 'uC'), quantity(15, 'kV')).to('mJ'):.4g~P}"
    '337.5 mJ'
    """
    return charge * voltage / 2


@formula(
    "A",
    "I = V/(Rₛ + R)",
    voltage=_VOLTAGE,
    series_resistance=_RESISTANCE,
    load_resistance=Takes("ohm", at_least=0),
)
def current_through(
    voltage: Quantity, series_resistance: Quantity, load_resistance: Quantity = SHORT_CIRCUIT
) -> Quantity:
    """Steady current from a supply through its series resistance into a load, ``I = V/(Rₛ + R)``.

    V in volts, resistances in ohms, I in amperes. With no load given the supply is short-circuited, which is
    the greatest current it gives. Ohmic resistances; says nothing of the charge in a capacitor.
    Source: Ohm's law.

    >>> f"{current_through(quantity(5, 'kV'), quantity(50, 'Mohm')).to('mA'):.4g~P}"
    '0.1 mA'
    """
    return voltage / (series_resistance + load_resistance)


@formula("ohm", "R = V/I", voltage=_VOLTAGE, current=Takes("A", more_than=0))
def resistance_limiting(voltage: Quantity, current: Quantity) -> Quantity:
    """Series resistance that holds a short-circuit current to a limit, ``R = V/I``.

    V in volts, I in amperes, R in ohms. Source: Ohm's law with no load.

    >>> f"{resistance_limiting(quantity(5, 'kV'), quantity(2, 'mA')).to('Mohm'):.4g~P}"
    '2.5 Mohm'
    """
    return voltage / current


@formula("V", "V = I·R", current=_CURRENT, resistance=Takes("ohm", at_least=0))
def voltage_drop(current: Quantity, resistance: Quantity) -> Quantity:
    """Voltage lost across a series resistance, ``V = I·R`` (I in amperes, R in ohms, V in volts).

    Source: Ohm's law. A leak of 10 µA through 50 MΩ takes 500 V:

    >>> f"{voltage_drop(quantity(10, 'uA'), quantity(50, 'Mohm')):.4g~P}"
    '500 V'
    """
    return current * resistance


@formula("W", "P = V·I", voltage=_VOLTAGE, current=_CURRENT)
def power_of(voltage: Quantity, current: Quantity) -> Quantity:
    """Power delivered, ``P = V·I`` (V in volts, I in amperes, P in watts); r.m.s. values in phase for a.c.

    Source: definition of electric power.

    >>> f"{power_of(quantity(12, 'V'), quantity(4, 'A')):.4g~P}"
    '48 W'
    """
    return voltage * current


@formula("W", "P = V²/R", voltage=_VOLTAGE, resistance=_RESISTANCE)
def power_in(resistance: Quantity, voltage: Quantity) -> Quantity:
    """Power turned to heat in a resistance, ``P = V²/R`` (V in volts, R in ohms, P in watts).

    Source: Ohm's law and Joule's law. A 50 MΩ safety resistance at 5 kV:

    >>> f"{power_in(quantity(50, 'Mohm'), quantity(5, 'kV')):.4g~P}"
    '0.5 W'
    """
    return voltage**2 / resistance


@formula(
    "V",
    "V = V₀·e^(−t/RC)",
    voltage=_VOLTAGE,
    resistance=_RESISTANCE,
    capacitance=_CAPACITANCE,
    time=Takes("s", at_least=0),
)
def voltage_left(voltage: Quantity, resistance: Quantity, capacitance: Quantity, time: Quantity) -> Quantity:
    """Voltage left on a capacitor discharging through a resistance, ``V = V₀·exp(−t/(R·C))``.

    V in volts, R in ohms, C in farads, t in seconds. An ideal capacitor: one that has been charged for
    long may recover some voltage after it is shorted. Source: solution of dQ/dt = −Q/(RC).

    >>> left = voltage_left(quantity(25, "V"), quantity(1, "kohm"), quantity(10, "mF"), quantity(10, "s"))
    >>> f"{left:.4g~P}"
    '9.197 V'
    """
    return voltage * exp(-time / (resistance * capacitance))


@formula(
    "s",
    "t = R·C·ln(V₀/V)",
    voltage=_SOME_VOLTAGE,
    safe_voltage=_SOME_VOLTAGE,
    resistance=_RESISTANCE,
    capacitance=_CAPACITANCE,
)
def discharge_time(
    voltage: Quantity, safe_voltage: Quantity, resistance: Quantity, capacitance: Quantity
) -> Quantity:
    """Time for a capacitor to fall to a safe voltage, ``t = R·C·ln(V₀/V)``; nothing if it is there already.

    V in volts, R in ohms, C in farads, t in seconds. Source: :func:`voltage_left`, solved for the time.

    >>> time = discharge_time(quantity(5, "kV"), quantity(60, "V"), quantity(10, "Mohm"), quantity(10, "nF"))
    >>> f"{time:.4g~P}"
    '0.4423 s'
    """
    return (
        resistance * capacitance * ln(voltage / safe_voltage)
        if voltage > safe_voltage
        else 0 * resistance * capacitance
    )


@formula("V", "V̂ = √2·V", rms=_VOLTAGE)
def peak_of(rms: Quantity) -> Quantity:
    """Peak of a sine wave from its r.m.s. value, ``V̂ = √2·V``, both in volts. Source: definition of r.m.s.

    >>> f"{peak_of(quantity(230, 'V')):.4g~P}"
    '325.3 V'
    """
    return rms * 2**0.5


@formula("V", "V = V̂/√2", peak=_VOLTAGE)
def rms_of(peak: Quantity) -> Quantity:
    """R.m.s. value of a sine wave from its peak, ``V = V̂/√2``, both in volts. Source: definition of r.m.s.

    >>> f"{rms_of(quantity(42.4, 'V')):.3g~P}"
    '30 V'
    """
    return peak / 2**0.5


@formula("F", "C = 4·π·ε₀·r", radius=_SIZE, permittivity=_PERMITTIVITY)
def sphere_capacitance(radius: Quantity, permittivity: Quantity = VACUUM_PERMITTIVITY) -> Quantity:
    """Capacitance of a sphere far from anything, ``C = 4·π·ε₀·r`` (r in metres, ε₀ in F/m, C in farads).

    Earthed things nearby make it greater. Source: Jackson, Classical Electrodynamics (from memory).

    >>> f"{sphere_capacitance(quantity(0.1, 'm')).to('pF'):.4g~P}"
    '11.13 pF'
    """
    return 4 * math.pi * permittivity * radius


@formula("V", "V = E·r", radius=_SIZE, breakdown_field=Takes("V/m", more_than=0))
def sphere_greatest_voltage(radius: Quantity, breakdown_field: Quantity = AIR_BREAKDOWN_FIELD) -> Quantity:
    """Greatest voltage of a smooth sphere in air, ``V = E·r`` (r in metres, E in V/m, V in volts).

    E is the field at which air breaks down, 3 MV/m for gaps of about a centimetre at 1 atm (a common textbook
    value). A joint, dust or a rough spot breaks down sooner, so a real dome reaches less.

    >>> f"{sphere_greatest_voltage(quantity(0.1, 'm')).to('kV'):.4g~P}"
    '300 kV'
    """
    return breakdown_field * radius


def dome_greatest_charge(radius: Quantity) -> Quantity:
    """Greatest charge of a dome as an isolated sphere in air, in coulombs, from its radius.

    >>> f"{dome_greatest_charge(quantity(0.1, 'm')).to('uC'):.3g~P}"
    '3.34 uC'
    """
    return charge_stored(sphere_capacitance(radius), sphere_greatest_voltage(radius))


def dome_greatest_energy(radius: Quantity) -> Quantity:
    """Greatest energy of a dome as an isolated sphere in air, in joules, from its radius.

    >>> f"{dome_greatest_energy(quantity(0.1, 'm')):.3g~P}"
    '0.501 J'
    """
    return energy_stored(sphere_capacitance(radius), sphere_greatest_voltage(radius))


@formula(
    "F",
    "C = εᵣ·ε₀·A/d",
    area=Takes("m**2", more_than=0),
    gap=_SIZE,
    relative_permittivity=Takes("", at_least=1),
    permittivity=_PERMITTIVITY,
)
def plates_capacitance(
    area: Quantity,
    gap: Quantity,
    relative_permittivity: Quantity = OF_VACUUM,
    permittivity: Quantity = VACUUM_PERMITTIVITY,
) -> Quantity:
    """Capacitance of two parallel plates, ``C = εᵣ·ε₀·A/d`` (A in m², d in metres, C in farads).

    Holds while the gap is small beside the plates: the field at the edges is left out, so C is a little low.
    Source: Jackson, Classical Electrodynamics (from memory).

    >>> f"{plates_capacitance(quantity(0.04, 'm**2'), quantity(5, 'mm')).to('pF'):.3g~P}"
    '70.8 pF'
    """
    return relative_permittivity * permittivity * area / gap


@formula("ohm", "R = 4·ρ·l/(π·d²)", resistivity=Takes("ohm*m", more_than=0), length=_SIZE, diameter=_SIZE)
def wire_resistance(resistivity: Quantity, length: Quantity, diameter: Quantity) -> Quantity:
    """Resistance of a round wire, ``R = 4·ρ·l/(π·d²)`` (ρ in Ω m, lengths in metres, R in ohms).

    At the temperature the resistivity is for. Source: definition of resistivity.

    >>> f"{wire_resistance(quantity(4.9e-7, 'ohm*m'), quantity(1, 'm'), quantity(0.315, 'mm')):.3g~P}"
    '6.29 ohm'
    """
    return 4 * resistivity * length / (math.pi * diameter**2)


@formula("ohm*m", "ρ = π·d²·R/(4·l)", resistance=_RESISTANCE, length=_SIZE, diameter=_SIZE)
def resistivity_of(resistance: Quantity, length: Quantity, diameter: Quantity) -> Quantity:
    """Resistivity of a round wire, ``ρ = π·d²·R/(4·l)`` (R in ohms, lengths in metres, ρ in Ω m).

    Source: definition of resistivity.

    >>> f"{resistivity_of(quantity(6.29, 'ohm'), quantity(1, 'm'), quantity(0.315, 'mm')).m_as('ohm*m'):.2e}"
    '4.90e-07'
    """
    return math.pi * diameter**2 * resistance / (4 * length)
