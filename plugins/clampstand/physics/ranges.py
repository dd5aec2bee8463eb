"""How far alpha and beta particles reach: rules for quick estimates, and published range tables."""

from clampstand.units import Curve, OutOfRange, Quantity, Takes, exp, formula, ln, quantity

MEV = 1.602176634e-13
ONE_MEV = quantity(1, "MeV").to("J")
ALPHA_SLOPE = quantity(1.24, "cm/MeV").to("m/J")
ALPHA_INTERCEPT = quantity(2.62, "cm").to("m")
KATZ_PENFOLD_SCALE = quantity(412, "mg/cm**2").to("kg/m**2")
KATZ_PENFOLD_SLOPE = quantity(530, "mg/(cm**2*MeV)").to("kg/(m**2*J)")
KATZ_PENFOLD_INTERCEPT = quantity(106, "mg/cm**2").to("kg/m**2")
TWELVE_FEET_PER_MEV = quantity(12, "ft/MeV").to("m/J")

_AREAL = Takes("kg/m**2", at_least=0)
_DENSITY = Takes("kg/m**3", more_than=0)


@formula(
    "m",
    "R = 1.24 cm/MeV · E − 2.62 cm",
    energy=Takes("J", at_least=4 * MEV, at_most=8 * MEV),
    slope=Takes("m/J", more_than=0),
    intercept=Takes("m", at_least=0),
)
def alpha_air_range_by_rule(
    energy: Quantity, slope: Quantity = ALPHA_SLOPE, intercept: Quantity = ALPHA_INTERCEPT
) -> Quantity:
    """Range of an alpha particle in air at 15 °C and 101.3 kPa by a straight line, in m.

    Energy E in J, for 4 MeV to 8 MeV only; 9 % below the tables at 4 MeV, within 3 % from
    5 MeV on. Source: textbook rule (Cember and Johnson, Introduction to Health Physics), from memory.

    >>> print(f"{alpha_air_range_by_rule(quantity(5, 'MeV')).to('cm'):.2f~P}")
    3.58 cm
    """
    return slope * energy - intercept


@formula("m", "d = R / ρ", areal_density=_AREAL, density=_DENSITY)
def thickness_of(areal_density: Quantity, density: Quantity) -> Quantity:
    """Thickness of a material that has a mass per area: turns a range in mg/cm² into a length.

    Mass per area R in kg/m², density ρ in kg/m³, d in m. Divide by the density of the day's own air: at 20
    °C it is 7 % below that at 0 °C. Source: definition.

    >>> americium = quantity(5.028, "mg/cm**2")
    >>> print(f"{thickness_of(americium, quantity(1.2048, 'kg/m**3')).to('cm'):.2f~P}")
    4.17 cm
    """
    return areal_density / density


@formula("m", "R₂ = R₁ · ρ₁ / ρ₂", length=Takes("m", at_least=0), density=_DENSITY, new_density=_DENSITY)
def range_at_density(length: Quantity, density: Quantity, new_density: Quantity) -> Quantity:
    """Range in the same material at another density, such as air on another day.

    Range R₁ in m at density ρ₁ in kg/m³. Holds for one material: its composition stays. Source: definition.

    >>> warm = range_at_density(quantity(4.17, "cm"), quantity(1.2048, "kg/m**3"), quantity(1.164, "kg/m**3"))
    >>> print(f"{warm.to('cm'):.2f~P}")
    4.32 cm
    """
    return length * density / new_density


def particle_range(energy: Quantity, table: Curve, density: Quantity) -> Quantity:
    """Range of a particle by a published range table (energy to mass per area), in m.

    Continuous-slowing-down ranges are path lengths: for alphas 1 % above the depth reached, for electrons
    up to twice it. Holds where the table reaches. Source: whichever the table cites.

    >>> air = Curve("MeV", "g/cm**2", ((5.0, 4.368e-3), (5.5, 5.051e-3)))
    >>> print(f"{particle_range(quantity(5.4856, 'MeV'), air, quantity(1.2048, 'kg/m**3')).to('cm'):.2f~P}")
    4.18 cm
    """
    return thickness_of(table.at(energy), density)


def energy_left(energy: Quantity, cover: Quantity, table: Curve) -> Quantity:
    """Energy a heavy particle has left behind a cover, in the table's unit of energy.

    The range left is the range of the whole energy less the cover: R(E′) = R(E) − cover, both in kg/m² of the
    table's own material. Raises OutOfRange when the cover stops the particle, or leaves it less than the
    table's first row. Source: continuous slowing down, ICRU Report 49 (1993).

    >>> air = Curve("MeV", "g/cm**2", ((1.0, 6.7e-4), (4.0, 3.147e-3), (5.0, 4.368e-3), (5.5, 5.051e-3)))
    >>> print(f"{energy_left(quantity(5.4856, 'MeV'), quantity(1.2, 'mg/cm**2'), air):.1f~P}")
    4.6 MeV
    """
    if cover < quantity(0, "kg/m**2"):
        raise OutOfRange(f"a cover has no mass below zero, and this is {cover:~P}")
    return table.where(table.at(energy) - cover)


@formula(
    "kg/m**2",
    "R = 412 mg/cm² · (E/MeV)^(1.265 − 0.0954 ln(E/MeV))",
    endpoint=Takes("J", at_least=0.01 * MEV, at_most=2.5 * MEV),
    scale=Takes("kg/m**2", more_than=0),
    one_mev=Takes("J", more_than=0),
)
def beta_range_to_2_5_mev(
    endpoint: Quantity, scale: Quantity = KATZ_PENFOLD_SCALE, one_mev: Quantity = ONE_MEV
) -> Quantity:
    """Greatest depth betas reach, as mass per area, for end points from 0.01 MeV to 2.5 MeV.

    Endpoint in J, R in kg/m². Measured in aluminium and fair for other light materials; some 5 %.
    Source: Katz and Penfold, Rev. Mod. Phys. 24 (1952) 28; formula from memory.

    >>> print(f"{beta_range_to_2_5_mev(quantity(2.2785, 'MeV')).to('mg/cm**2').magnitude:.0f}")
    1095
    """
    x = ln(endpoint / one_mev)
    return scale * exp((1.265 - 0.0954 * x) * x)


@formula(
    "kg/m**2",
    "R = 530 mg/cm² · E/MeV − 106 mg/cm²",
    endpoint=Takes("J", more_than=2.5 * MEV, at_most=20 * MEV),
    slope=Takes("kg/(m**2*J)", more_than=0),
    intercept=Takes("kg/m**2", at_least=0),
)
def beta_range_above_2_5_mev(
    endpoint: Quantity, slope: Quantity = KATZ_PENFOLD_SLOPE, intercept: Quantity = KATZ_PENFOLD_INTERCEPT
) -> Quantity:
    """Greatest depth betas reach, as mass per area, for end points above 2.5 MeV and up to 20 MeV.

    Endpoint in J, R in kg/m². Source: Katz and Penfold, Rev. Mod. Phys. 24 (1952) 28; formula from memory.

    >>> print(f"{beta_range_above_2_5_mev(quantity(3.27, 'MeV')).to('mg/cm**2').magnitude:.0f}")
    1627
    """
    return slope * endpoint - intercept


def beta_greatest_range(endpoint: Quantity) -> Quantity:
    """Greatest depth betas of an end-point energy reach, in kg/m²: the two parts of Katz and Penfold.

    From 0.01 MeV to 20 MeV. This is how deep the last of a spectrum gets, some 20 % less than the path length
    (CSDA range) of its fastest. Source: Katz and Penfold, Rev. Mod. Phys. 24 (1952) 28; from memory.

    >>> yttrium = beta_greatest_range(quantity(2.2785, "MeV"))
    >>> print(f"{thickness_of(yttrium, quantity(2.699, 'g/mL')).to('mm'):.2f~P}")
    4.06 mm
    """
    if endpoint > quantity(2.5, "MeV"):
        return beta_range_above_2_5_mev(endpoint)
    return beta_range_to_2_5_mev(endpoint)


@formula(
    "m",
    "R = 12 ft/MeV · E",
    endpoint=Takes("J", at_least=0.5 * MEV, at_most=3 * MEV),
    slope=Takes("m/J", more_than=0),
)
def beta_air_range_by_rule(endpoint: Quantity, slope: Quantity = TWELVE_FEET_PER_MEV) -> Quantity:
    """Greatest range of betas in air by the rule of twelve feet per MeV, in m.

    End point in J, from 0.5 MeV to 3 MeV; some 20 %. Source: health physicists' rule of thumb, common
    practice.

    >>> print(f"{beta_air_range_by_rule(quantity(1.71, 'MeV')):.1f~P}")
    6.3 m
    """
    return slope * endpoint
