"""Sound: a day's noise exposure from a level and a time, and levels added together."""

import math
from collections.abc import Sequence

from clampstand.units import OutOfRange, Quantity, Takes, formula, ln, number_in, quantity

WORKING_DAY = quantity(8, "h")
ONE_DECIBEL = quantity(1, "dBA")

_LEVEL = Takes("dBA", at_least=0, at_most=194)
_TIME = Takes("s", more_than=0)


@formula("dBA", "L_EX = L + 10·lg(t/8 h)", level=_LEVEL, time=_TIME, day=_TIME, decibel=Takes("dBA"))
def daily_exposure(
    level: Quantity, time: Quantity, day: Quantity = WORKING_DAY, decibel: Quantity = ONE_DECIBEL
) -> Quantity:
    """A day's exposure to noise that lasts a time and is otherwise quiet, ``L_EX = L + 10·lg(t/8 h)``.

    L and L_EX A-weighted in dB, t in s. Source: ISO 9612 and Directive 2003/10/EC, daily noise exposure
    level.

    >>> f"{daily_exposure(quantity(94, 'dBA'), quantity(1, 'h')).m_as('dBA'):.1f} dB(A)"
    '85.0 dB(A)'
    """
    return level + 4.342944819032518 * decibel * ln(time / day)  # 10/ln 10, so 10 lg of the ratio


def sum_of_levels(levels: Sequence[Quantity]) -> Quantity:
    """Level of several sounds together, ``L = 10·lg Σ 10^(Lᵢ/10)``, in dB; or of a day's several exposures.

    For sounds that keep no step with one another. Source: energies add.

    Raises:
        OutOfRange: without any level, or for a level that is not a finite number.

    >>> f"{sum_of_levels([quantity(80, 'dBA'), quantity(80, 'dBA')]).m_as('dBA'):.1f} dB(A)"
    '83.0 dB(A)'
    """
    numbers = [number_in(level, "dBA") for level in levels]
    if not numbers or not all(math.isfinite(number) and number <= 194 for number in numbers):
        raise OutOfRange("a sum of levels needs levels, each a finite number up to 194 dB")
    loudest = max(numbers)
    return quantity(loudest + 10 * math.log10(sum(10 ** ((n - loudest) / 10) for n in numbers)), "dBA")
