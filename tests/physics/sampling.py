"""Numbers inside and just outside the ranges that formulae declare, for the tests of every formula."""

import math

from clampstand.units import Formula, Takes


def inside(takes: Takes) -> float:
    """A number in the range of an argument."""
    low = takes.at_least if takes.at_least is not None else takes.more_than
    if low is None:
        low = 0.0 if takes.at_most is None else takes.at_most - 2
    high = takes.at_most if takes.at_most is not None else low + 2
    return low + (high - low) * 0.4


def arguments(formula: Formula) -> dict[str, float]:
    """A number for each argument; constants as they stand."""
    numbers = {}
    for name, parameter in formula.signature.parameters.items():
        takes = formula.takes[name]
        given = parameter.default is not parameter.empty
        numbers[name] = float(parameter.default.m_as(takes.unit)) if given else inside(takes)
    return numbers


def beyond(takes: Takes) -> list[float]:
    """Numbers just outside the range of an argument."""
    outside = [math.nan, math.inf]
    if takes.at_least is not None:
        outside.append(takes.at_least - abs(takes.at_least) * 1e-3 - 1e-20)
    if takes.more_than is not None:
        outside.append(takes.more_than)
    if takes.at_most is not None:
        outside.append(takes.at_most * 1.001)
    return outside
