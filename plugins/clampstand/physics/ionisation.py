"""Ions in air: pairs from a particle, the current they carry, and the voltage at which air gives way."""

import math

from clampstand.units import OutOfRange, Quantity, Takes, formula, ln, quantity, sqrt

ELEMENTARY_CHARGE = quantity(1.602176634e-19, "C")  # exact: SI brochure, 9th edition (2019)
ONE_A_DECAY = quantity(1, "1/decay")
AT_20_C = quantity(1, "")
GAP_SLOPE = quantity(24.22, "kV/cm").to("V/m")
GAP_ROOT = quantity(6.08, "kV/cm**0.5").to("V/m**0.5")

_W = Takes("J", more_than=0)
_ENERGY = Takes("J", at_least=0)
_GAP = Takes("m", more_than=0)


@formula("", "N = E / W", energy=_ENERGY, w=_W)
def ion_pairs(energy: Quantity, w: Quantity) -> Quantity:
    """Ion pairs a particle makes when it stops in a gas.

    Energy E lost in the gas and mean energy W per pair, both in J. W belongs to the gas and the particle:
    in air it is 35.1 eV for 5 MeV alphas, not the 33.97 eV of electrons. Source: ICRU Report 31 (1979).

    >>> print(f"{ion_pairs(quantity(5.4856, 'MeV'), quantity(35.1, 'eV')):.0f~P}")
    156285
    """
    return energy / w


@formula(
    "A",
    "I = A · y · f · E · e / W",
    activity=Takes("Bq", at_least=0),
    energy=_ENERGY,
    share=Takes("", at_least=0, at_most=1),
    w=_W,
    per_decay=Takes("1/decay", at_least=0),
    elementary_charge=Takes("C", more_than=0),
)
def saturation_current(
    activity: Quantity,
    energy: Quantity,
    share: Quantity,
    w: Quantity,
    per_decay: Quantity = ONE_A_DECAY,
    elementary_charge: Quantity = ELEMENTARY_CHARGE,
) -> Quantity:
    """Greatest current that the ions of a source can carry, when every ion is gathered.

    A in Bq; energy E each particle leaves in the gas and W in J; share f of the particles that enter the
    gas (one half above a flat source); particles per decay y in 1/decay; elementary charge e in C; I in A.
    Holds when the field is strong enough to gather all and too weak to multiply. Source: definition of W,
    ICRU 31.

    >>> energy, w = quantity(5.4856, "MeV"), quantity(35.1, "eV")
    >>> half = saturation_current(quantity(185, "kBq"), energy, quantity(0.5, ""), w)
    >>> print(f"{half.to('nA'):.2f~P}")
    2.32 nA
    """
    return activity * per_decay * share * energy * elementary_charge / w


@formula(
    "",
    "f = 2/(1 + √(1 + (40/81)·(V₉/V)²))",
    voltage=Takes("V", more_than=0),
    voltage_for_nine_tenths=Takes("V", more_than=0),
)
def share_gathered(voltage: Quantity, voltage_for_nine_tenths: Quantity) -> Quantity:
    """Share of the ions made between plates that a voltage gathers before they meet again.

    V in V; V₉ the voltage that gathers nine tenths, which has to be measured. Holds for ions spread evenly:
    as many are made as meet (∝ n²) and are drawn off (∝ n·V). It gives the shape of the curve, a straight
    line first and then a loss as 1/V², and not the plateau of a real source, whose ions lie along tracks.
    Source: J. J. Thomson's balance of ions (1899, from memory), simplified to an even density.

    >>> print(f"{share_gathered(quantity(1, 'kV'), quantity(1, 'kV')):.2f~P}")
    0.90
    """
    return 2 / (1 + sqrt(1 + 40 / 81 * (voltage_for_nine_tenths / voltage) ** 2))


@formula(
    "s",
    "t = C · ΔV / I",
    capacitance=Takes("F", more_than=0),
    voltage_drop=Takes("V", at_least=0),
    current=Takes("A", more_than=0),
)
def electroscope_fall_time(capacitance: Quantity, voltage_drop: Quantity, current: Quantity) -> Quantity:
    """Time an electroscope takes to fall through a voltage when ions carry its charge off.

    C in F, ΔV in V, I in A, t in s. Holds while the current stays: the field still gathers every ion.
    Source: definitions of capacitance and current.

    >>> print(f"{electroscope_fall_time(quantity(10, 'pF'), quantity(500, 'V'), quantity(1, 'nA')):.0f~P}")
    5 s
    """
    return capacitance * voltage_drop / current


@formula("V", "V = E · d", field=Takes("V/m", more_than=0), gap=_GAP)
def breakdown_voltage_at_field(field: Quantity, gap: Quantity) -> Quantity:
    """Voltage a gap stands at a breakdown field, in V.

    Field E in V/m (30 kV/cm is customary for air and gaps near 1 cm), d in m, for an even field. Small gaps
    stand more, points and edges much less. Source: common practice; see the field's own citation.

    >>> print(f"{breakdown_voltage_at_field(quantity(30, 'kV/cm'), quantity(1, 'cm')).to('kV'):.0f~P}")
    30 kV
    """
    return field * gap


@formula("m", "d = V / E", voltage=Takes("V", at_least=0), field=Takes("V/m", more_than=0))
def gap_flashed_over(voltage: Quantity, field: Quantity) -> Quantity:
    """Widest even gap that a voltage can flash over at a breakdown field, in m.

    V in V, E in V/m. For an even field: from a point a spark reaches further.
    Source: :func:`breakdown_voltage_at_field`, turned round.

    >>> print(f"{gap_flashed_over(quantity(5, 'kV'), quantity(30, 'kV/cm')).to('mm'):.2f~P}")
    1.67 mm
    """
    return voltage / field


@formula(
    "V",
    "V = 24.22 kV/cm · δd + 6.08 kV/√cm · √(δd)",
    gap=Takes("m", at_least=1e-4, at_most=0.2),
    relative_density=Takes("", at_least=0.7, at_most=1.3),
    slope=Takes("V/m", more_than=0),
    root=Takes("V/m**0.5", more_than=0),
)
def breakdown_voltage(
    gap: Quantity,
    relative_density: Quantity = AT_20_C,
    slope: Quantity = GAP_SLOPE,
    root: Quantity = GAP_ROOT,
) -> Quantity:
    """Voltage at which an even gap in air breaks down, peak value in V.

    Gap d in m, from 0.1 mm to 20 cm; relative air density δ, 1 at 20 °C and 101.3 kPa; dry, clean air between
    smooth electrodes. Source: Kuffel and Zaengl, High Voltage Engineering, from memory.

    >>> print(f"{breakdown_voltage(quantity(1, 'cm')).to('kV'):.1f~P}")
    30.3 kV
    """
    reduced = relative_density * gap
    return slope * reduced + root * sqrt(reduced)


@formula(
    "V",
    "V = B·p·d / (ln(A·p·d) − ln ln(1 + 1/γ))",
    pressure=Takes("Pa", more_than=0),
    gap=_GAP,
    a=Takes("1/(Pa*m)", more_than=0),
    b=Takes("V/(Pa*m)", more_than=0),
    gamma=Takes("", more_than=0, at_most=1),
)
def paschen_voltage(pressure: Quantity, gap: Quantity, a: Quantity, b: Quantity, gamma: Quantity) -> Quantity:
    """Breakdown voltage of an even gap by Paschen's law.

    p in Pa, d in m, A in 1/(Pa m), B in V/(Pa m), second Townsend coefficient γ from 0 to 1; V in V.
    Constants of published tables differ widely, and some pages misprint them: for 1 cm of air the answer
    must lie near 30 kV. Refuses a gap too short for the law, left of its pole. Source: Paschen (1889);
    Townsend's theory.

    >>> volts = paschen_voltage(quantity(101.325, "kPa"), quantity(1, "cm"),
    ...     quantity(112.501, "1/(kPa*cm)"), quantity(2737.5, "V/(kPa*cm)"), quantity(0.01, ""))
    >>> print(f"{volts.to('kV'):.1f~P}")
    35.5 kV
    """
    pole = ln(a * pressure * gap) - ln(ln(1 + 1 / gamma))
    if pole <= 0:
        raise OutOfRange("the gap is too short, or the gas too thin, for Paschen's law to give a voltage")
    return b * pressure * gap / pole


@formula(
    "V",
    "V = e · (B/A) · ln(1 + 1/γ)",
    a=Takes("1/(Pa*m)", more_than=0),
    b=Takes("V/(Pa*m)", more_than=0),
    gamma=Takes("", more_than=0, at_most=1),
)
def paschen_least_voltage(a: Quantity, b: Quantity, gamma: Quantity) -> Quantity:
    """Least voltage that breaks a gas down at any gap: the bottom of the Paschen curve, in V.

    A in 1/(Pa m), B in V/(Pa m), γ from 0 to 1. About 330 V in air. Source: Paschen's law, its minimum.

    >>> least = paschen_least_voltage(
    ...     quantity(112.501, "1/(kPa*cm)"), quantity(2737.5, "V/(kPa*cm)"), quantity(0.01, ""))
    >>> print(f"{least:.0f~P}")
    305 V
    """
    return math.e * b / a * ln(1 + 1 / gamma)
