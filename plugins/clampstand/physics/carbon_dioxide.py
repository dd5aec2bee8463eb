"""Carbon dioxide over dry ice, over its liquid, and shut in a vessel.

Equations of Span and Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509, section 3 (coefficients read in public
programs that quote it; tests compare the results with CoolProp and chemicals). R is exact in the SI (2019).
"""

from clampstand.units import OutOfRange, Quantity, Takes, exp, formula, quantity

GAS_CONSTANT = quantity(8.31446261815324, "J/(mol*K)")
ATMOSPHERE = quantity(101325, "Pa")
MOLAR_MASS = quantity(44.009e-3, "kg/mol")
CRITICAL_TEMPERATURE = quantity(304.1282, "K")
CRITICAL_PRESSURE = quantity(7.3773e6, "Pa")
CRITICAL_DENSITY = quantity(467.6, "kg/m**3")
TRIPLE_TEMPERATURE = quantity(216.592, "K")
TRIPLE_PRESSURE = quantity(517.95e3, "Pa")


@formula(
    "Pa",
    "p = m·R·T/(M·V)",
    mass=Takes("kg", at_least=0),
    volume=Takes("m**3", more_than=0),
    temperature=Takes("K", more_than=0),
    molar_mass=Takes("kg/mol", more_than=0),
    gas_constant=Takes("J/(mol*K)", more_than=0),
)
def ideal_pressure(
    mass: Quantity,
    volume: Quantity,
    temperature: Quantity,
    molar_mass: Quantity = MOLAR_MASS,
    gas_constant: Quantity = GAS_CONSTANT,
) -> Quantity:
    """Pressure a mass of CO2 would add in a closed vessel as an ideal gas, ``p = m·R·T/(M·V)``.

    m in kg, V in m³, T in kelvins, p in pascals. Too high once the gas begins to turn to liquid: see
    :func:`pressure_in_sealed_vessel`.

    >>> f"{ideal_pressure(quantity(100, 'g'), quantity(500, 'mL'), quantity(293.15, 'K')).to('bar'):.4g~P}"
    '110.8 bar'
    """
    return mass * gas_constant * temperature / (molar_mass * volume)


@formula(
    "Pa",
    "ln(p/p_c) = (T_c/T)·(−7.0602087·τ + 1.9391218·τ^1.5 − 1.6463597·τ² − 3.2995634·τ⁴),  τ = 1 − T/T_c",
    temperature=Takes("K", at_least=216.592, at_most=304.1282),
    critical_temperature=Takes("K", more_than=0),
    critical_pressure=Takes("Pa", more_than=0),
)
def saturation_pressure(
    temperature: Quantity,
    critical_temperature: Quantity = CRITICAL_TEMPERATURE,
    critical_pressure: Quantity = CRITICAL_PRESSURE,
) -> Quantity:
    """Pressure of CO2 over its own liquid, T in kelvins from the triple to the critical point, p in pascals.

    Above the critical point there is no liquid and no such pressure. Source: Span and Wagner (1996), eq.
    3.13.

    >>> f"{saturation_pressure(quantity(293.15, 'K')).to('bar'):.4g~P}"
    '57.29 bar'
    """
    return critical_pressure * exp(
        critical_temperature
        / temperature
        * (
            -7.0602087 * (1 - temperature / critical_temperature)
            + 1.9391218 * (1 - temperature / critical_temperature) ** 1.5
            - 1.6463597 * (1 - temperature / critical_temperature) ** 2
            - 3.2995634 * (1 - temperature / critical_temperature) ** 4
        )
    )


@formula(
    "Pa",
    "ln(p/p_t) = (T_t/T)·(−14.740846·τ + 2.4327015·τ^1.9 − 5.3061778·τ^2.9),  τ = 1 − T/T_t",
    temperature=Takes("K", at_least=150, at_most=216.592),
    triple_temperature=Takes("K", more_than=0),
    triple_pressure=Takes("Pa", more_than=0),
)
def sublimation_pressure(
    temperature: Quantity,
    triple_temperature: Quantity = TRIPLE_TEMPERATURE,
    triple_pressure: Quantity = TRIPLE_PRESSURE,
) -> Quantity:
    """Pressure of CO2 over dry ice, T in kelvins (150 K to the triple point), p in pascals.

    Source: Span and Wagner (1996), eq. 3.12.

    >>> f"{sublimation_pressure(quantity(194.685, 'K')).to('kPa'):.4g~P}"
    '101.3 kPa'
    """
    return triple_pressure * exp(
        triple_temperature
        / temperature
        * (
            -14.740846 * (1 - temperature / triple_temperature)
            + 2.4327015 * (1 - temperature / triple_temperature) ** 1.9
            - 5.3061778 * (1 - temperature / triple_temperature) ** 2.9
        )
    )


def sublimation_temperature(pressure: Quantity = ATMOSPHERE) -> Quantity:
    """Temperature of dry ice in its own gas at a pressure, by halving, to a millionth of a kelvin.

    Raises:
        OutOfRange: for a pressure above the triple point or below that of dry ice at 150 K.

    >>> f"{sublimation_temperature().to('degC'):.2f~P}"
    '-78.46 degC'
    """
    low, high = quantity(150, "K"), TRIPLE_TEMPERATURE
    if not sublimation_pressure(low) <= pressure <= sublimation_pressure(high):
        raise OutOfRange(f"dry ice does not sublime at {pressure:~P} between 150 K and its triple point")
    while (high - low).m_as("K") > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if sublimation_pressure(middle) < pressure else (low, middle)
    return (low + high) / 2


def pressure_in_sealed_vessel(
    mass: Quantity, volume: Quantity, temperature: Quantity, air_pressure: Quantity = ATMOSPHERE
) -> Quantity:
    """Absolute pressure if CO2 is shut in a vessel of air.

    That of an ideal gas until liquid forms, then the saturation pressure, added to the air's. Any vessel of
    a school bursts long before: the number is for showing why dry ice is never shut in.

    Raises:
        OutOfRange: outside the triple to the critical temperature, or for more CO2 than its critical density
            fills the vessel with, when liquid may fill it and nothing bounds the pressure.

    >>> p = pressure_in_sealed_vessel(quantity(100, "g"), quantity(500, "mL"), quantity(293.15, "K"))
    >>> f"{p.to('bar'):.3g~P}"
    '58.3 bar'
    """
    if mass / volume > CRITICAL_DENSITY:
        raise OutOfRange(f"{mass:~P} of CO2 may fill {volume:~P} with liquid: nothing bounds the pressure")
    return air_pressure + min(ideal_pressure(mass, volume, temperature), saturation_pressure(temperature))
