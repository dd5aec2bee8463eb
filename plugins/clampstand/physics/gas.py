"""Gases near atmospheric pressure: volume and density from mass, concentration by volume and by mass.

R is exact in the SI (2019). The molar mass of CO2 is from IUPAC's abridged atomic masses; its critical
constants are those of Span and Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509 (tests compare them with
CoolProp).
"""

from clampstand.units import Quantity, Takes, formula, quantity

GAS_CONSTANT = quantity(8.31446261815324, "J/(mol*K)")
ATMOSPHERE = quantity(101325, "Pa")
IDEAL = quantity(0, "m**3/mol")
CO2_MOLAR_MASS = quantity(44.009e-3, "kg/mol")
CO2_CRITICAL_TEMPERATURE = quantity(304.1282, "K")
CO2_CRITICAL_PRESSURE = quantity(7.3773e6, "Pa")
CO2_ACENTRIC_FACTOR = quantity(0.2239, "")

_MASS = Takes("kg", at_least=0)
_DENSITY = Takes("kg/m**3", more_than=0)
_MOLAR_MASS = Takes("kg/mol", more_than=0)
_TEMPERATURE = Takes("K", more_than=0)
_ROOM_PRESSURE = Takes("Pa", more_than=0, at_most=1e6)
_GAS_CONSTANT = Takes("J/(mol*K)", more_than=0)
_FRACTION = Takes("", at_least=0, at_most=1)


@formula(
    "m**3/mol",
    "B = (R·T_c/p_c)·(0.083 − 0.422/τ^1.6 + ω·(0.139 − 0.172/τ^4.2)),  τ = T/T_c",
    temperature=Takes("K", at_least=200, at_most=1000),
    critical_temperature=Takes("K", more_than=0),
    critical_pressure=Takes("Pa", more_than=0),
    acentric_factor=Takes(""),
    gas_constant=_GAS_CONSTANT,
)
def second_virial_coefficient(
    temperature: Quantity,
    critical_temperature: Quantity = CO2_CRITICAL_TEMPERATURE,
    critical_pressure: Quantity = CO2_CRITICAL_PRESSURE,
    acentric_factor: Quantity = CO2_ACENTRIC_FACTOR,
    gas_constant: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Second virial coefficient of a gas, by Abbott's equations; of CO2 unless told.

    T in kelvins, p_c in pascals, B in m³/mol; for gases without strong polarity, 200 K to 1000 K. Source:
    Smith and Van Ness, Introduction to Chemical Engineering Thermodynamics, generalised correlations (from
    memory).

    >>> f"{second_virial_coefficient(quantity(293.15, 'K')).to('cm**3/mol'):.3g~P}"
    '-130 cm³/mol'
    """
    return (
        gas_constant
        * critical_temperature
        / critical_pressure
        * (
            0.083
            - 0.422 / (temperature / critical_temperature) ** 1.6
            + acentric_factor * (0.139 - 0.172 / (temperature / critical_temperature) ** 4.2)
        )
    )


@formula(
    "kg/m**3",
    "ρ = M/(R·T/p + B)",
    molar_mass=_MOLAR_MASS,
    temperature=_TEMPERATURE,
    pressure=_ROOM_PRESSURE,
    second_virial=Takes("m**3/mol", at_least=-1e-3, at_most=1e-3),
    gas_constant=_GAS_CONSTANT,
)
def gas_density(
    molar_mass: Quantity,
    temperature: Quantity,
    pressure: Quantity = ATMOSPHERE,
    second_virial: Quantity = IDEAL,
    gas_constant: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Density of a gas, ``ρ = M/(R·T/p + B)``; of an ideal gas when no second virial coefficient is given.

    M in kg/mol, T in kelvins, p absolute in pascals (to 1 MPa), B in m³/mol, ρ in kg/m³.

    >>> warm = quantity(293.15, "K")
    >>> f"{gas_density(CO2_MOLAR_MASS, warm, second_virial=second_virial_coefficient(warm)):.4g~P}"
    '1.839 kg/m³'
    """
    return molar_mass / (gas_constant * temperature / pressure + second_virial)


def carbon_dioxide_density(temperature: Quantity, pressure: Quantity = ATMOSPHERE) -> Quantity:
    """Density of CO2 gas at a temperature (200 K to 1000 K) and a pressure (to 1 MPa), not taken as ideal.

    >>> f"{carbon_dioxide_density(quantity(293.15, 'K')):.4g~P}"
    '1.839 kg/m³'
    """
    return gas_density(CO2_MOLAR_MASS, temperature, pressure, second_virial_coefficient(temperature))


@formula("m**3", "V = m/ρ", mass=_MASS, density=_DENSITY)
def gas_volume(mass: Quantity, density: Quantity) -> Quantity:
    """Volume of a mass of gas, ``V = m/ρ`` (m in kg, ρ in kg/m³ at its temperature and pressure, V in m³).

    >>> f"{gas_volume(quantity(1, 'kg'), quantity(1.839, 'kg/m**3')).to('L'):.3g~P}"
    '544 l'
    """
    return mass / density


@formula("", "d = ρ/ρₐ", density=_DENSITY, air_density=_DENSITY)
def relative_density(density: Quantity, air_density: Quantity) -> Quantity:
    """Density of a gas beside that of air at the same temperature and pressure; above 1 the gas gathers low.

    >>> f"{relative_density(quantity(1.839, 'kg/m**3'), quantity(1.2046, 'kg/m**3')):.3g~P}"
    '1.53'
    """
    return density / air_density


@formula(
    "kg/m**3",
    "c = x·p·M/(R·T)",
    fraction=_FRACTION,
    molar_mass=_MOLAR_MASS,
    temperature=_TEMPERATURE,
    pressure=_ROOM_PRESSURE,
    gas_constant=_GAS_CONSTANT,
)
def mass_concentration(
    fraction: Quantity,
    molar_mass: Quantity,
    temperature: Quantity,
    pressure: Quantity = ATMOSPHERE,
    gas_constant: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Mass of a gas in a volume of air from its fraction by volume, ``c = x·p·M/(R·T)``.

    M in kg/mol, T in kelvins, p in pascals, c in kg/m³. The temperature matters: British limits are worked
    out at 20 °C, American ones at 25 °C.

    >>> c = mass_concentration(quantity(5000, "ppm"), CO2_MOLAR_MASS, quantity(293.15, "K"))
    >>> f"{c.m_as('mg/m**3'):.0f} mg/m³"
    '9148 mg/m³'
    """
    return fraction * pressure * molar_mass / (gas_constant * temperature)


@formula(
    "",
    "x = c·R·T/(p·M)",
    concentration=Takes("kg/m**3", at_least=0),
    molar_mass=_MOLAR_MASS,
    temperature=_TEMPERATURE,
    pressure=_ROOM_PRESSURE,
    gas_constant=_GAS_CONSTANT,
)
def volume_fraction(
    concentration: Quantity,
    molar_mass: Quantity,
    temperature: Quantity,
    pressure: Quantity = ATMOSPHERE,
    gas_constant: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Fraction by volume from the mass of a gas in a volume of air, ``x = c·R·T/(p·M)``.

    The inverse of :func:`mass_concentration`, with its units.

    >>> x = volume_fraction(quantity(9000, "mg/m**3"), CO2_MOLAR_MASS, quantity(298.15, "K"))
    >>> f"{x.m_as('ppm'):.0f} ppm"
    '5003 ppm'
    """
    return concentration * gas_constant * temperature / (pressure * molar_mass)


@formula("", "w = x·M/Mₐ", fraction=_FRACTION, molar_mass=_MOLAR_MASS, air_molar_mass=_MOLAR_MASS)
def mass_ratio(fraction: Quantity, molar_mass: Quantity, air_molar_mass: Quantity) -> Quantity:
    """Mass of a gas beside the mass of the air it is in, from its fraction by volume, ``w = x·M/Mₐ``.

    For a small fraction. Limits are by volume: 5000 ppm by volume of CO2 is 7600 mg in a kilogram of air.

    >>> f"{mass_ratio(quantity(5000, 'ppm'), CO2_MOLAR_MASS, quantity(0.0289655, 'kg/mol')).m_as('ppm'):.0f}"
    '7597'
    """
    return fraction * molar_mass / air_molar_mass


@formula(
    "m**3",
    "V = V_l·ρ·R·T/(M·p)",
    liquid_volume=Takes("m**3", at_least=0),
    liquid_density=_DENSITY,
    molar_mass=_MOLAR_MASS,
    temperature=_TEMPERATURE,
    pressure=_ROOM_PRESSURE,
    gas_constant=_GAS_CONSTANT,
)
def vapour_volume(
    liquid_volume: Quantity,
    liquid_density: Quantity,
    molar_mass: Quantity,
    temperature: Quantity,
    pressure: Quantity = ATMOSPHERE,
    gas_constant: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Volume of vapour if all of a liquid evaporates into air, ``V = V_l·ρ·R·T/(M·p)``, as an ideal gas.

    Volumes in m³, ρ in kg/m³, M in kg/mol, T in kelvins, p in pascals.

    >>> v = vapour_volume(
    ...     quantity(1, "mL"), quantity(789, "kg/m**3"), quantity(46.068, "g/mol"), quantity(293.15, "K")
    ... )
    >>> f"{v.to('L'):.3g~P}"
    '0.412 l'
    """
    return liquid_volume * liquid_density * gas_constant * temperature / (molar_mass * pressure)


@formula(
    "m**3",
    "V = Vᵥ/LFL",
    vapour_volume=Takes("m**3", at_least=0),
    lower_flammable_limit=Takes("", more_than=0, at_most=1),
)
def air_made_flammable(vapour_volume: Quantity, lower_flammable_limit: Quantity) -> Quantity:
    """Greatest volume of air that a vapour can make flammable, ``V = Vᵥ/LFL`` (volumes in m³).

    LFL is the lower flammable limit as a fraction by volume: 3.1 % is 0.031. Near the liquid the air is
    richer.

    >>> f"{air_made_flammable(quantity(4.12, 'L'), quantity(3.1, 'percent')).to('L'):.3g~P}"
    '133 l'
    """
    return vapour_volume / lower_flammable_limit


@formula("", "x = p/p₀", vapour_pressure=Takes("Pa", at_least=0), pressure=_ROOM_PRESSURE)
def saturated_fraction(vapour_pressure: Quantity, pressure: Quantity = ATMOSPHERE) -> Quantity:
    """Fraction of vapour in air that stands over its liquid, ``x = p/p₀`` (pressures in Pa).

    At the temperature of the vapour pressure, below boiling. Above the lower flammable limit an open bottle
    can catch fire, as ethanol can at 20 °C. Source: Dalton's law.

    >>> f"{saturated_fraction(quantity(5.876, 'kPa')).m_as('percent'):.1f} %"
    '5.8 %'
    """
    return vapour_pressure / pressure
