"""Areas that are measured on a plate, a tile or a slide."""

import math

from clampstand.units import Quantity, Takes, formula

QUARTER_PI = math.pi / 4


@formula("m**2", "A = π·d²/4", diameter=Takes("m", at_least=0))
def disc_area(diameter: Quantity) -> Quantity:
    """Area of a round patch from its diameter, such as a clear zone on a plate.

    d in m, A in m². Of a patch that is not quite round, the mean of two diameters across each other.
    Source: geometry.

    >>> from clampstand.units import quantity
    >>> print(f"{disc_area(quantity(20, 'mm')).to('mm**2'):.1f~P}")
    314.2 mm²
    """
    return QUARTER_PI * diameter**2
