"""Dose rates of photons from a small source: constants from emission lines, distances, times, comparisons.

Every result names its quantity: air kerma, ambient dose equivalent H*(10) and effective dose are three.
"""

import math
from collections.abc import Iterable
from typing import NamedTuple

from clampstand.units import Curve, OutOfRange, Quantity, Takes, formula, number_in, quantity, sqrt

FOUR_PI = 4 * math.pi
GRAY = quantity(1, "Gy*kg/J")  # 1 Gy is 1 J/kg, said aloud because grays and joules must not mix by accident
NEAREST = 0.01
"""Metres. A disc source 5 mm across gives 3 % less here than the point law says; nearer, the law fails."""

_KERMA_CONSTANT = Takes("Gy*m**2/decay", at_least=0)
_AMBIENT_CONSTANT = Takes("Sv*m**2/decay", at_least=0)
_ACTIVITY = Takes("Bq", at_least=0)
_DISTANCE = Takes("m", at_least=NEAREST)
_YIELD = Takes("1/decay", at_least=0)
_ENERGY = Takes("J", more_than=0)
_GRAY = Takes("Gy*kg/J", more_than=0)


class PhotonLine(NamedTuple):
    """One gamma or X-ray line: its energy, and photons per decay (unit 1/decay)."""

    energy: Quantity
    per_decay: Quantity


@formula(
    "Gy*m**2/decay",
    "k = E · y · (μ_en/ρ) / 4π",
    energy=_ENERGY,
    per_decay=_YIELD,
    mass_energy_absorption=Takes("m**2/kg", at_least=0),
    gray=_GRAY,
)
def kerma_constant_of_line(
    energy: Quantity, per_decay: Quantity, mass_energy_absorption: Quantity, gray: Quantity = GRAY
) -> Quantity:
    """One photon line's part of the air-kerma rate constant.

    Photon energy E in J, yield y in 1/decay, mass energy-absorption coefficient of dry air μ_en/ρ in m²/kg;
    gives Gy m²/decay, which is Gy m²/(Bq s). Holds for a point source in empty space, without bremsstrahlung.
    Source: ICRU Report 85a (2011), air-kerma rate constant.

    >>> absorption = quantity(0.0293, "cm**2/g")
    >>> k = kerma_constant_of_line(quantity(661.657, "keV"), quantity(0.847, "1/decay"), absorption)
    >>> print(f"{k.to('uGy*m**2/(GBq*h)').magnitude:.1f}")
    75.4
    """
    return energy * per_decay * mass_energy_absorption * gray / FOUR_PI


@formula(
    "Sv*m**2/decay",
    "k = y · h*(10) / 4π",
    per_decay=_YIELD,
    ambient_per_fluence=Takes("Sv*m**2", at_least=0),
)
def ambient_constant_of_line(per_decay: Quantity, ambient_per_fluence: Quantity) -> Quantity:
    """One photon line's part of the ambient dose-equivalent rate constant.

    Yield y in 1/decay; H*(10) per photon fluence h*(10) in Sv m²; gives Sv m²/decay, which is Sv m²/(Bq s).
    Holds for a point source in empty space. Source: ICRP Publication 74 (1996), conversion coefficients.

    >>> k = ambient_constant_of_line(quantity(0.847, "1/decay"), quantity(3.71, "pSv*cm**2"))
    >>> print(f"{k.to('uSv*m**2/(GBq*h)').magnitude:.1f}")
    90.0
    """
    return per_decay * ambient_per_fluence / FOUR_PI


def air_kerma_rate_constant(
    lines: Iterable[PhotonLine], mass_energy_absorption: Curve, cutoff: Quantity
) -> Quantity:
    """Air-kerma rate constant of a nuclide, or of a mixture whose yields are per decay of its parent.

    Sum of :func:`kerma_constant_of_line` over photons of at least the cut-off energy, in Gy m²/decay.
    The cut-off belongs to the figure: for Am-241 the constants for 15 keV and 30 keV differ fivefold.
    Holds where the table of coefficients reaches. Source: ICRU Report 85a (2011).

    >>> air = Curve("MeV", "cm**2/g", ((1.0, 0.02789), (1.25, 0.02666), (1.5, 0.02547)))
    >>> cobalt = [PhotonLine(quantity(e, "MeV"), quantity(1, "1/decay")) for e in (1.173, 1.332)]
    >>> k = air_kerma_rate_constant(cobalt, air, quantity(20, "keV"))
    >>> print(f"{k.to('uGy*m**2/(GBq*h)').magnitude:.0f}")
    306
    """
    total = quantity(0, "Gy*m**2/decay")
    for line in lines:
        if line.energy >= cutoff:
            coefficient = mass_energy_absorption.at(line.energy)
            total += kerma_constant_of_line(line.energy, line.per_decay, coefficient)
    return total


def ambient_dose_rate_constant(
    lines: Iterable[PhotonLine], ambient_per_fluence: Curve, cutoff: Quantity
) -> Quantity:
    """Ambient dose-equivalent rate constant, H*(10), of a nuclide or of a mixture per decay of its parent.

    Sum of :func:`ambient_constant_of_line` over photons of at least the cut-off energy, in Sv m²/decay.
    Holds where the table of coefficients reaches. H*(10) is above the air kerma: 1.74 times it at 59.5 keV.
    Source: ICRP Publication 74 (1996), table A.21, for the coefficients.

    >>> table = Curve("MeV", "pSv*cm**2", ((0.6, 3.44), (0.8, 4.38)))
    >>> caesium = [PhotonLine(quantity(661.657, "keV"), quantity(0.847, "1/decay"))]
    >>> k = ambient_dose_rate_constant(caesium, table, quantity(20, "keV"))
    >>> print(f"{k.to('uSv*m**2/(GBq*h)').magnitude:.1f}")
    90.6
    """
    table, total = ambient_per_fluence, 0.0
    coherent = number_in(quantity(1, table.y_unit), "Sv*m**2")
    softest = number_in(cutoff, table.x_unit)
    for line in lines:  # on plain numbers: a nuclide may have a hundred lines
        energy = number_in(line.energy, table.x_unit)
        if energy >= softest:
            per_decay = number_in(line.per_decay, "1/decay")
            total += ambient_constant_of_line.body(per_decay, table.number_at(energy) * coherent)
    return quantity(total, "Sv*m**2/decay")


@formula("Gy/s", "K̇ = k · A / d²", constant=_KERMA_CONSTANT, activity=_ACTIVITY, distance=_DISTANCE)
def air_kerma_rate(constant: Quantity, activity: Quantity, distance: Quantity) -> Quantity:
    """Air-kerma rate of a small bare source at a distance.

    Constant k in Gy m²/decay, A in Bq, d in m from 10 mm on. Neither air nor capsule weakens it here.
    Source: inverse-square law; definition of the constant, ICRU Report 85a (2011).

    >>> caesium = quantity(76.6, "uGy*m**2/(GBq*h)")
    >>> print(f"{air_kerma_rate(caesium, quantity(185, 'kBq'), quantity(10, 'cm')).to('uGy/h'):.2f~P}")
    1.42 uGy/h
    """
    return constant * activity / distance**2


@formula("Sv/s", "Ḣ = k · A / d²", constant=_AMBIENT_CONSTANT, activity=_ACTIVITY, distance=_DISTANCE)
def ambient_dose_rate(constant: Quantity, activity: Quantity, distance: Quantity) -> Quantity:
    """Ambient dose-equivalent rate H*(10) of a small bare source at a distance.

    Constant k in Sv m²/decay, A in Bq, d in m from 10 mm on. Neither air nor capsule weakens it here.
    Source: inverse-square law; definition of the constant, ICRP Publication 74 (1996).

    >>> cobalt = quantity(348, "uSv*m**2/(GBq*h)")
    >>> print(f"{ambient_dose_rate(cobalt, quantity(185, 'kBq'), quantity(10, 'cm')).to('uSv/h'):.1f~P}")
    6.4 uSv/h
    """
    return constant * activity / distance**2


@formula(
    "m", "d = √(k · A / Ḣ)", constant=_AMBIENT_CONSTANT, activity=_ACTIVITY, rate=Takes("Sv/s", more_than=0)
)
def distance_for_rate(constant: Quantity, activity: Quantity, rate: Quantity) -> Quantity:
    """Distance at which a small source's H*(10) rate has fallen to a rate.

    k in Sv m²/decay, A in Bq, rate in Sv/s. An answer under 10 mm is nearer than the law holds.
    Source: :func:`ambient_dose_rate`, turned round.

    >>> cobalt = quantity(348, "uSv*m**2/(GBq*h)")
    >>> print(f"{distance_for_rate(cobalt, quantity(185, 'kBq'), quantity(1, 'uSv/h')):.3f~P}")
    0.254 m
    """
    return sqrt(constant * activity / rate)


@formula(
    "Bq",
    "A = Ḣ · d² / k",
    constant=Takes("Sv*m**2/decay", more_than=0),
    distance=_DISTANCE,
    rate=Takes("Sv/s", at_least=0),
)
def activity_for_rate(constant: Quantity, distance: Quantity, rate: Quantity) -> Quantity:
    """Activity of a small source that gives an H*(10) rate at a distance.

    k in Sv m²/decay, d in m from 10 mm on, rate in Sv/s. Source: :func:`ambient_dose_rate`, turned round.

    >>> cobalt = quantity(348, "uSv*m**2/(GBq*h)")
    >>> print(f"{activity_for_rate(cobalt, quantity(10, 'cm'), quantity(1, 'uSv/h')).to('kBq'):.1f~P}")
    28.7 kBq
    """
    return rate * distance**2 / constant


@formula("", "Ḣ₁/Ḣ₂ = (d₂/d₁)²", near=_DISTANCE, far=_DISTANCE)
def rate_ratio(near: Quantity, far: Quantity) -> Quantity:
    """How many times the rate at one distance is the rate at another.

    Distances d₁, d₂ in m from 10 mm on. Holds for a small source in free space. Source: inverse-square law.

    >>> print(f"{rate_ratio(quantity(10, 'cm'), quantity(30, 'cm')):.1f~P}")
    9.0
    """
    return (far / near) ** 2


@formula(
    "count/s",
    "R₂ = R₁ · ((d₁ + c)/(d₂ + c))²",
    rate=Takes("count/s", at_least=0),
    distance=_DISTANCE,
    new_distance=_DISTANCE,
    offset=Takes("m", at_least=0),
)
def count_rate_at_distance(
    rate: Quantity, distance: Quantity, new_distance: Quantity, offset: Quantity
) -> Quantity:
    """Net count rate at a new distance, from the depth at which a detector counts as if it were a point.

    R in count/s without background; d in m, from 10 mm on, from the source capsule's face to the window; c,
    in m, how deep source and effective centre of the detector lie behind these, together. Source: inverse-
    square law.

    >>> moved = count_rate_at_distance(
    ...     quantity(100, "count/s"), quantity(9, "cm"), quantity(19, "cm"), quantity(1, "cm"))
    >>> print(f"{moved:.1f~P}")
    25.0 count/s
    """
    return rate * ((distance + offset) / (new_distance + offset)) ** 2


@formula("Sv", "H = Ḣ · t", rate=Takes("Sv/s", at_least=0), time=Takes("s", at_least=0))
def dose(rate: Quantity, time: Quantity) -> Quantity:
    """Dose gathered in a time at a steady rate.

    Rate in Sv/s, t in s from zero on. The dose is the same quantity as the rate, H*(10) for H*(10).
    Source: definition of a rate.

    >>> print(f"{dose(quantity(0.716, 'uSv/h'), quantity(50, 'h')).to('uSv'):.1f~P}")
    35.8 uSv
    """
    return rate * time


@formula("s", "t = H / Ḣ_b", amount=Takes("Sv", at_least=0), background=Takes("Sv/s", more_than=0))
def background_time(amount: Quantity, background: Quantity) -> Quantity:
    """How long natural background takes to give the same dose.

    Dose H in Sv; natural background as a rate in Sv/s. A comparison of size, not of quality: background is
    stated as effective dose, and includes radon breathed in. Source: definition of a rate.

    >>> print(f"{background_time(quantity(0.1, 'uSv'), quantity(2.4, 'mSv/year')).to('min'):.0f~P}")
    22 min
    """
    return amount / background


@formula(
    "Gy",
    "K = X · W/e",
    exposure=Takes("C/kg", at_least=0),
    w_over_e=Takes("J/C", more_than=0),
    gray=_GRAY,
)
def air_kerma_from_exposure(exposure: Quantity, w_over_e: Quantity, gray: Quantity = GRAY) -> Quantity:
    """Air kerma of an exposure, for reading older instruments and tables in roentgens.

    X in C/kg (1 R is 2.58e-4 C/kg exactly), W/e of dry air in J/C. Holds below some 3 MeV, where little
    energy leaves as bremsstrahlung. Source: ICRU Report 85a (2011).

    >>> print(f"{air_kerma_from_exposure(quantity(1, 'R'), quantity(33.97, 'J/C')).to('mGy'):.2f~P}")
    8.76 mGy
    """
    return exposure * w_over_e * gray


@formula(
    "C/kg",
    "X = K / (W/e)",
    kerma=Takes("Gy", at_least=0),
    w_over_e=Takes("J/C", more_than=0),
    gray=_GRAY,
)
def exposure_from_air_kerma(kerma: Quantity, w_over_e: Quantity, gray: Quantity = GRAY) -> Quantity:
    """Exposure of an air kerma.

    K in Gy, W/e of dry air in J/C, X in C/kg. Range and source as :func:`air_kerma_from_exposure`.

    >>> print(f"{exposure_from_air_kerma(quantity(8.764, 'mGy'), quantity(33.97, 'J/C')).to('R'):.3f~P}")
    1.000 R
    """
    return kerma / (w_over_e * gray)


def disc_share(distance: Quantity, radius: Quantity) -> Quantity:
    """Rate on the axis of an even disc source, as a share of what the point law gives.

    (d/a)² · ln(1 + (a/d)²), distance d and radius a in m, both above zero. 0.99 at 3.5 diameters.
    Source: the inverse-square law summed over the disc.

    >>> print(f"{disc_share(quantity(10, 'mm'), quantity(2.5, 'mm')):.2f~P}")
    0.97
    """
    d, a = number_in(distance, "m"), number_in(radius, "m")
    if not (0 < d < math.inf and 0 < a < math.inf):
        raise OutOfRange("a disc's distance and radius are both more than zero")
    squared = (a / d) ** 2
    return quantity(math.log1p(squared) / squared, "")
