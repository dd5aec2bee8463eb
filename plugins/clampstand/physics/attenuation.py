"""Narrow beams of photons through matter: what passes, and the thickness that lets a share pass."""

import math
from collections.abc import Sequence

from clampstand.units import OutOfRange, Quantity, Takes, exp, formula, ln, number_in, quantity

LN2, LN10 = math.log(2), math.log(10)

_COEFFICIENT = Takes("m**2/kg", more_than=0)
_DENSITY = Takes("kg/m**3", more_than=0)


@formula(
    "",
    "T = exp(−(μ/ρ)·ρ·x)",
    mass_attenuation=_COEFFICIENT,
    density=_DENSITY,
    thickness=Takes("m", at_least=0),
)
def transmission(mass_attenuation: Quantity, density: Quantity, thickness: Quantity) -> Quantity:
    """Share of a narrow beam's photons that pass a thickness without meeting anything.

    μ/ρ in m²/kg, ρ in kg/m³, x in m from zero on. Holds for one photon energy and a narrow beam: behind a
    wide shield more arrives, scattered. Source: Beer-Lambert law.

    >>> lead = quantity(0.110, "cm**2/g"), quantity(11.35, "g/mL")
    >>> print(f"{transmission(*lead, quantity(6, 'mm')):.3f~P}")
    0.473
    """
    return exp(-mass_attenuation * density * thickness)


@formula("m", "x½ = ln 2 / ((μ/ρ)·ρ)", mass_attenuation=_COEFFICIENT, density=_DENSITY)
def half_value_thickness(mass_attenuation: Quantity, density: Quantity) -> Quantity:
    """Thickness that halves a narrow beam of one energy.

    μ/ρ in m²/kg, ρ in kg/m³, x½ in m. It is 0.69 of the mean free path. Source: Beer-Lambert law.

    >>> print(f"{half_value_thickness(quantity(0.110, 'cm**2/g'), quantity(11.35, 'g/mL')).to('mm'):.2f~P}")
    5.55 mm
    """
    return LN2 / (mass_attenuation * density)


@formula("m", "x⅒ = ln 10 / ((μ/ρ)·ρ)", mass_attenuation=_COEFFICIENT, density=_DENSITY)
def tenth_value_thickness(mass_attenuation: Quantity, density: Quantity) -> Quantity:
    """Thickness that passes a tenth of a narrow beam of one energy.

    μ/ρ in m²/kg, ρ in kg/m³, x⅒ in m. It is 3.32 half-value thicknesses. Source: Beer-Lambert law.

    >>> print(f"{tenth_value_thickness(quantity(0.110, 'cm**2/g'), quantity(11.35, 'g/mL')).to('mm'):.1f~P}")
    18.4 mm
    """
    return LN10 / (mass_attenuation * density)


@formula("m", "l = 1 / ((μ/ρ)·ρ)", mass_attenuation=_COEFFICIENT, density=_DENSITY)
def mean_free_path(mass_attenuation: Quantity, density: Quantity) -> Quantity:
    """Average way of a photon before it meets something.

    μ/ρ in m²/kg, ρ in kg/m³, l in m. Source: Beer-Lambert law.

    >>> print(f"{mean_free_path(quantity(0.110, 'cm**2/g'), quantity(11.35, 'g/mL')).to('mm'):.2f~P}")
    8.01 mm
    """
    return 1 / (mass_attenuation * density)


@formula("", "n = log₂(1/T)", share=Takes("", more_than=0, at_most=1))
def half_values_for(share: Quantity) -> Quantity:
    """How many half-value thicknesses let a share of a narrow beam pass.

    Share T above 0 and at most 1. Holds for one photon energy. Source: Beer-Lambert law.

    >>> print(f"{half_values_for(quantity(0.1, '')):.2f~P}")
    3.32
    """
    return -ln(share) / LN2


def thickness_for_mixture(
    weights: Sequence[Quantity], mass_attenuations: Sequence[Quantity], density: Quantity, share: Quantity
) -> Quantity:
    """Thickness that lets a share of a beam of several photon energies pass, in m.

    Solves Σ wᵢ·exp(−(μ/ρ)ᵢ·ρ·x) = T · Σ wᵢ by bisection. Weights wᵢ, of any one kind, say what each energy
    brings (its part of the air-kerma constant, for air kerma); μ/ρ in m²/kg, ρ in kg/m³, T above 0 and at
    most 1. Holds for a narrow beam. Source: Beer-Lambert law, summed.

    >>> both = [quantity(0.0617, "cm**2/g"), quantity(0.0562, "cm**2/g")]
    >>> kerma = [quantity(1.173, ""), quantity(1.332, "")]
    >>> half = thickness_for_mixture(kerma, both, quantity(11.35, "g/mL"), quantity(0.5, ""))
    >>> print(f"{half.to('mm'):.1f~P}")
    10.4 mm
    """
    per_metre = number_in(density, "kg/m**3")
    slopes = [number_in(m, "m**2/kg") * per_metre for m in mass_attenuations]
    sizes = [number_in(w, weights[0].units) for w in weights]
    wanted = number_in(share, "")
    if not (slopes and len(slopes) == len(sizes) and min(*slopes, *sizes) > 0 and 0 < wanted <= 1):
        raise OutOfRange(
            "each energy needs a weight and a coefficient above zero, and the share lies from 0 to 1"
        )

    def passed(metres: float) -> float:
        return math.fsum(w * math.exp(-s * metres) for w, s in zip(sizes, slopes, strict=True))

    low, high = -math.log(wanted) / max(slopes), -math.log(wanted) / min(slopes)
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if passed(middle) > wanted * sum(sizes) else (low, middle)
    return quantity((low + high) / 2, "m")
