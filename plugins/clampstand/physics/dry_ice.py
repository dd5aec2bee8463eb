"""Dry ice: snow made from a cylinder of liquid CO2, the gas that making it vents, and the loss from a box.

Enthalpies must share one reference state: take them all from the same table of ``content/reference``.
"""

from clampstand.units import Quantity, Takes, formula, quantity

ALL_CAUGHT = quantity(1, "")

_MASS = Takes("kg", at_least=0)
_ENTHALPY = Takes("J/kg")
_SHARE = Takes("", more_than=0, at_most=1)
_LOSS = Takes("kg/s", at_least=0)
_TIME = Takes("s", at_least=0)


@formula(
    "",
    "w = (h_g − h)/Δh",
    fluid_enthalpy=_ENTHALPY,
    gas_enthalpy=_ENTHALPY,
    sublimation_enthalpy=Takes("J/kg", more_than=0),
)
def snow_fraction(
    fluid_enthalpy: Quantity, gas_enthalpy: Quantity, sublimation_enthalpy: Quantity
) -> Quantity:
    """Greatest part of a cylinder's CO2 that can turn to snow at 1 atm, by mass, ``w = (h_g − h)/Δh``.

    h is the enthalpy of the fluid that leaves the cylinder (saturated liquid by a dip tube, vapour without
    one), h_g that of the gas and Δh the enthalpy of sublimation, both at the sublimation temperature; all in
    J/kg. Throttling keeps the enthalpy; heat from the horn and snow blown away make less (pass the share
    caught to :func:`liquid_for_snow`). None when the fluid holds more than the gas does. Source: energy
    balance.

    >>> w = snow_fraction(quantity(255.87, "kJ/kg"), quantity(422.6, "kJ/kg"), quantity(574.3, "kJ/kg"))
    >>> f"{w.m_as('percent'):.1f} %"
    '29.0 %'
    """
    return (
        (gas_enthalpy - fluid_enthalpy) / sublimation_enthalpy
        if gas_enthalpy > fluid_enthalpy
        else 0 * sublimation_enthalpy / sublimation_enthalpy
    )


@formula("kg", "m_l = m/(w·c)", snow=_MASS, snow_fraction=_SHARE, share_caught=_SHARE)
def liquid_for_snow(snow: Quantity, snow_fraction: Quantity, share_caught: Quantity = ALL_CAUGHT) -> Quantity:
    """Liquid a cylinder gives to make a mass of snow, ``m_l = m/(w·c)`` (masses in kg).

    w is the greatest snow fraction and c the share of the snow that stays in the bag; a maker's bag catches
    less than all of it, so measure c by weighing.

    >>> f"{liquid_for_snow(quantity(400, 'g'), quantity(0.29, '')).to('kg'):.3g~P}"
    '1.38 kg'
    """
    return snow / (snow_fraction * share_caught)


@formula("kg", "m_g = m·(1/(w·c) − 1)", snow=_MASS, snow_fraction=_SHARE, share_caught=_SHARE)
def gas_vented(snow: Quantity, snow_fraction: Quantity, share_caught: Quantity = ALL_CAUGHT) -> Quantity:
    """Gas that goes into the room while a mass of snow is made, ``m_g = m·(1/(w·c) − 1)`` (masses in kg).

    The gas comes at once; the snow itself follows as it sublimes. Arguments as :func:`liquid_for_snow`.

    >>> f"{gas_vented(quantity(400, 'g'), quantity(0.29, '')).to('kg'):.3g~P}"
    '0.979 kg'
    """
    return snow * (1 / (snow_fraction * share_caught) - 1)


@formula("kg", "m = M − T", full_mass=_MASS, tare=_MASS)
def cylinder_contents(full_mass: Quantity, tare: Quantity) -> Quantity:
    """What is left in a cylinder by weighing, ``m = M − T``: its mass now less the tare stamped on it, in kg.

    A gauge cannot tell: over liquid the pressure is that of the temperature until the last liquid is gone.
    Nothing when it weighs its tare or less.

    >>> f"{cylinder_contents(quantity(16.4, 'kg'), quantity(10.05, 'kg')):.3g~P}"
    '6.35 kg'
    """
    return full_mass - tare if full_mass > tare else 0 * tare


@formula("kg", "m = m₀ − ṁ·t", mass=_MASS, loss=_LOSS, time=_TIME)
def mass_left_in_box(mass: Quantity, loss: Quantity, time: Quantity) -> Quantity:
    """Dry ice left in an insulated box after a time, ``m = m₀ − ṁ·t``, never below nothing.

    m in kg, ṁ the box's own loss in kg/s, t in seconds. The loss of a closed box hardly depends on how full
    it is; opening it, or a small load, loses faster.

    >>> f"{mass_left_in_box(quantity(10, 'kg'), quantity(4.5, 'kg/day'), quantity(20, 'h')):.3g~P}"
    '6.25 kg'
    """
    return mass - loss * time if mass > loss * time else 0 * mass


@formula("kg", "m₀ = m + ṁ·t", mass=_MASS, loss=_LOSS, time=_TIME)
def mass_to_order(mass: Quantity, loss: Quantity, time: Quantity) -> Quantity:
    """Dry ice to order so that a mass is left after a wait, ``m₀ = m + ṁ·t``.

    Units as :func:`mass_left_in_box`, which it turns round.

    >>> f"{mass_to_order(quantity(3, 'kg'), quantity(4.5, 'kg/day'), quantity(20, 'h')):.3g~P}"
    '6.75 kg'
    """
    return mass + loss * time


@formula(
    "kg/s", "ṁ = P/Δh", heat_flow=Takes("W", at_least=0), sublimation_enthalpy=Takes("J/kg", more_than=0)
)
def sublimation_rate(heat_flow: Quantity, sublimation_enthalpy: Quantity) -> Quantity:
    """Rate at which dry ice sublimes when heat flows into it, ``ṁ = P/Δh`` (P in W, Δh in J/kg, ṁ in kg/s).

    >>> f"{sublimation_rate(quantity(160, 'W'), quantity(574, 'kJ/kg')).to('kg/h'):.3g~P}"
    '1 kg/h'
    """
    return heat_flow / sublimation_enthalpy
