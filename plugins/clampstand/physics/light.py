"""Light: interference fringes, and how far from a laser the eye is safe.

The exposure limit and the hazard distance are those of IEC 60825-1 and IEC TR 60825-14 (from memory, so
unverified).
"""

import math

from clampstand.units import Quantity, Takes, formula, quantity, sqrt

PUPIL = quantity(7, "mm")
VISIBLE_LIMIT = quantity(18, "J/(m**2*s**0.75)")

_LENGTH = Takes("m", more_than=0)
_POWER = Takes("W", at_least=0)
_DIVERGENCE = Takes("radian", more_than=0, at_most=0.5)


@formula("m", "w = λ·D/s", wavelength=_LENGTH, screen_distance=_LENGTH, slit_separation=_LENGTH)
def fringe_spacing(wavelength: Quantity, screen_distance: Quantity, slit_separation: Quantity) -> Quantity:
    """Distance between bright fringes of two slits, ``w = λ·D/s``, all in metres.

    For a screen far away beside the separation of the slits, near the middle. Source: Young's experiment.

    >>> f"{fringe_spacing(quantity(635, 'nm'), quantity(2, 'm'), quantity(0.25, 'mm')).to('mm'):.3g~P}"
    '5.08 mm'
    """
    return wavelength * screen_distance / slit_separation


@formula("m", "λ = w·s/D", fringe_spacing=_LENGTH, slit_separation=_LENGTH, screen_distance=_LENGTH)
def wavelength_of_fringes(
    fringe_spacing: Quantity, slit_separation: Quantity, screen_distance: Quantity
) -> Quantity:
    """Wavelength from the fringes of two slits, ``λ = w·s/D``, all in metres.

    Range as :func:`fringe_spacing`.

    >>> f"{wavelength_of_fringes(quantity(5.1, 'mm'), quantity(0.25, 'mm'), quantity(2, 'm')).to('nm'):.3g~P}"
    '637 nm'
    """
    return fringe_spacing * slit_separation / screen_distance


@formula("W/m**2", "E = 4·P/(π·d²)", power=_POWER, aperture=_LENGTH)
def irradiance(power: Quantity, aperture: Quantity = PUPIL) -> Quantity:
    """Irradiance of a power spread over a round opening, ``E = 4·P/(π·d²)``; over a wide pupil unless told.

    P in W, d the diameter in m, E in W/m². The standard averages over 7 mm even where the beam is narrower.

    >>> f"{irradiance(quantity(1, 'mW')):.3g~P}"
    '26 W/m²'
    """
    return 4 * power / (math.pi * aperture**2)


@formula(
    "m",
    "d = d₀ + φ·L",
    beam_diameter=Takes("m", at_least=0),
    divergence=Takes("radian", at_least=0, at_most=0.5),
    distance=Takes("m", at_least=0),
)
def beam_diameter_at(beam_diameter: Quantity, divergence: Quantity, distance: Quantity) -> Quantity:
    """Diameter of a beam after a distance, ``d = d₀ + φ·L`` (lengths in m, φ the full angle in radians).

    For small angles (to 0.5 rad) from a beam that spreads from its opening on.

    >>> f"{beam_diameter_at(quantity(1, 'mm'), quantity(1.5, 'mradian'), quantity(10, 'm')).to('mm'):.3g~P}"
    '16 mm'
    """
    return beam_diameter + divergence * distance


@formula(
    "W/m**2",
    "E = 18·t^0.75/t",
    time=Takes("s", at_least=1.8e-5, at_most=10),
    coefficient=Takes("J/(m**2*s**0.75)", more_than=0),
)
def visible_exposure_limit(time: Quantity, coefficient: Quantity = VISIBLE_LIMIT) -> Quantity:
    """Greatest exposure of the eye to a visible laser beam, ``E = 18·t^0.75/t`` (t in s, E in W/m²).

    400 nm to 700 nm, point source, 18 µs to 10 s; 0.25 s is the time to look away or blink. Source: IEC
    60825-1, maximum permissible exposure at the cornea (from memory; a maker's manual read gives 25 W/m² at
    0.25 s).

    >>> f"{visible_exposure_limit(quantity(0.25, 's')):.4g~P}"
    '25.46 W/m²'
    """
    return coefficient * time**0.75 / time


@formula(
    "m",
    "D = (√(4·P/(π·E)) − d₀)/φ",
    power=_POWER,
    beam_diameter=Takes("m", at_least=0),
    divergence=_DIVERGENCE,
    exposure_limit=Takes("W/m**2", more_than=0),
)
def hazard_distance(
    power: Quantity, beam_diameter: Quantity, divergence: Quantity, exposure_limit: Quantity
) -> Quantity:
    """Distance beyond which a beam is below the exposure limit, ``D = (√(4·P/(π·E)) − d₀)/φ``.

    The nominal ocular hazard distance: P in W, d₀ and D in m, φ the full angle in radians, E in W/m². For a
    beam of even brightness and the naked eye; nothing when it is below the limit from its opening on.

    >>> D = hazard_distance(
    ...     quantity(5, "mW"), quantity(1, "mm"), quantity(1, "mradian"), quantity(25.46, "W/m**2")
    ... )
    >>> f"{D:.3g~P}"
    '14.8 m'
    """
    return (
        (sqrt(4 * power / (math.pi * exposure_limit)) - beam_diameter) / divergence
        if sqrt(4 * power / (math.pi * exposure_limit)) > beam_diameter
        else 0 * beam_diameter
    )
