"""Heat: energy supplied, what it warms, and what it melts or sublimes.

A rise is a difference between two temperatures, in kelvins; 20 °C is a temperature and never a rise.
"""

from clampstand.units import Quantity, Takes, formula

_MASS = Takes("kg", more_than=0)
_SPECIFIC_HEAT = Takes("J/(kg*K)", more_than=0)
_RISE = Takes("K", at_least=0, at_most=5000)
_ENERGY = Takes("J", at_least=0)
_TIME = Takes("s", at_least=0)


@formula("J", "E = P·t", power=Takes("W", at_least=0), time=_TIME)
def energy_supplied(power: Quantity, time: Quantity) -> Quantity:
    """Energy a heater gives in a time, ``E = P·t`` (P in W, t in s, E in J). Source: definition of power.

    >>> from clampstand.units import q
    >>> f"{energy_supplied(q('50 W'), q('10 min')).to('kJ'):.3g~P}"
    '30 kJ'
    """
    return power * time


@formula("J/(kg*K)", "c = E/(m·ΔT)", energy=_ENERGY, mass=_MASS, rise=Takes("K", more_than=0, at_most=5000))
def specific_heat(energy: Quantity, mass: Quantity, rise: Quantity) -> Quantity:
    """Specific heat from the energy that warmed a mass, ``c = E/(m·ΔT)``.

    E in J, m in kg, ΔT the rise in K, c in J/(kg K). All the energy is taken to stay in the mass: an unlagged
    block gives too great a value. Source: definition of specific heat.

    >>> from clampstand.units import q
    >>> f"{specific_heat(q('30 kJ'), q('1 kg'), q('33 K')):.3g~P}"
    '909 J/K/kg'
    """
    return energy / (mass * rise)


@formula("J", "E = m·c·ΔT", mass=_MASS, specific_heat=_SPECIFIC_HEAT, rise=_RISE)
def energy_to_warm(mass: Quantity, specific_heat: Quantity, rise: Quantity) -> Quantity:
    """Energy that warms a mass, ``E = m·c·ΔT`` (m in kg, c in J/(kg K), ΔT in K, E in J).

    While nothing melts or boils and c hardly changes. Source: definition of specific heat.

    >>> from clampstand.units import q
    >>> f"{energy_to_warm(q('0.2 kg'), q('4181 J/(kg K)'), q('80 K')).to('kJ'):.3g~P}"
    '66.9 kJ'
    """
    return mass * specific_heat * rise


@formula("K", "ΔT = E/(m·c)", energy=_ENERGY, mass=_MASS, specific_heat=_SPECIFIC_HEAT)
def temperature_rise(energy: Quantity, mass: Quantity, specific_heat: Quantity) -> Quantity:
    """Rise in temperature of a mass given energy, ``ΔT = E/(m·c)``: a difference in K, not a temperature.

    E in J, m in kg, c in J/(kg K). No losses: the greatest rise. Source: definition of specific heat.

    >>> from clampstand.units import q
    >>> f"{temperature_rise(q('30 kJ'), q('1 kg'), q('900 J/(kg K)')):.3g~P}"
    '33.3 K'
    """
    return energy / (mass * specific_heat)


@formula("J", "E = m·L", mass=_MASS, specific_latent_heat=Takes("J/kg", more_than=0))
def energy_to_change_state(mass: Quantity, specific_latent_heat: Quantity) -> Quantity:
    """Energy that melts, boils or sublimes a mass, ``E = m·L`` (m in kg, L in J/kg, E in J).

    At the temperature of the change. Source: definition of specific latent heat.

    >>> from clampstand.units import q
    >>> f"{energy_to_change_state(q('1 kg'), q('574 kJ/kg')).to('kJ'):.3g~P}"
    '574 kJ'
    """
    return mass * specific_latent_heat
