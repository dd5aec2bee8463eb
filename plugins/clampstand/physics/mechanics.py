"""Energy that lets go at once: a stretched wire and a vessel of compressed gas."""

import math

from clampstand.units import Quantity, Takes, formula, quantity

ATMOSPHERE = quantity(101325, "Pa")
DIATOMIC = quantity(1.4, "")

_FORCE = Takes("N", at_least=0)
_LENGTH = Takes("m", more_than=0)
_PRESSURE = Takes("Pa", more_than=0)


@formula("m", "x = 4·F·l/(π·d²·E)", force=_FORCE, length=_LENGTH, diameter=_LENGTH, young_modulus=_PRESSURE)
def extension_of_wire(
    force: Quantity, length: Quantity, diameter: Quantity, young_modulus: Quantity
) -> Quantity:
    """Extension of a round wire, ``x = 4·F·l/(π·d²·E)`` (F in N, lengths in m, Young's modulus E in Pa).

    Up to the limit of proportionality. Source: definition of Young's modulus.

    >>> x = extension_of_wire(
    ...     quantity(20, "N"), quantity(2, "m"), quantity(0.28, "mm"), quantity(120e9, "Pa")
    ... )
    >>> f"{x.to('mm'):.3g~P}"
    '5.41 mm'
    """
    return 4 * force * length / (math.pi * diameter**2 * young_modulus)


@formula("J", "W = F·x/2", force=_FORCE, extension=Takes("m", at_least=0))
def elastic_energy(force: Quantity, extension: Quantity) -> Quantity:
    """Energy in something stretched, ``W = F·x/2`` (F in N, x in m, W in J).

    Up to the limit of proportionality. It all goes into the flying end when the wire snaps. Source: work of
    a force that grows evenly.

    >>> f"{elastic_energy(quantity(20, 'N'), quantity(5.41, 'mm')).to('mJ'):.3g~P}"
    '54.1 mJ'
    """
    return force * extension / 2


@formula("Pa", "p = p_g + p₀", gauge_pressure=Takes("Pa", at_least=0), atmosphere=_PRESSURE)
def absolute_pressure(gauge_pressure: Quantity, atmosphere: Quantity = ATMOSPHERE) -> Quantity:
    """Absolute pressure from what a gauge shows, ``p = p_g + p₀``, in pascals.

    >>> f"{absolute_pressure(quantity(6, 'bar')).to('bar'):.3g~P}"
    '7.01 bar'
    """
    return gauge_pressure + atmosphere


@formula(
    "J",
    "E = (p − p₀)·V/(γ − 1)",
    absolute_pressure=_PRESSURE,
    volume=Takes("m**3", more_than=0),
    atmosphere=_PRESSURE,
    heat_ratio=Takes("", more_than=1, at_most=1.67),
)
def energy_of_compressed_gas(
    absolute_pressure: Quantity,
    volume: Quantity,
    atmosphere: Quantity = ATMOSPHERE,
    heat_ratio: Quantity = DIATOMIC,
) -> Quantity:
    """Energy a vessel of compressed gas can let go, ``E = (p − p₀)·V/(γ − 1)``.

    p is absolute (a gauge reads p − p₀), in Pa, V in m³, E in J; γ is the ratio of specific heats, 1.4 for
    air. Nothing at or below the pressure outside. Ideal gas; water in the vessel stores nothing to speak of.
    Source: Brode, J. Appl. Phys. 26 (1955) 766 (from memory).

    >>> f"{energy_of_compressed_gas(quantity(7, 'bar'), quantity(2, 'L')).to('kJ'):.3g~P}"
    '2.99 kJ'
    """
    return (
        (absolute_pressure - atmosphere) * volume / (heat_ratio - 1)
        if absolute_pressure > atmosphere
        else 0 * atmosphere * volume
    )
