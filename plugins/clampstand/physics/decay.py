"""Decay of a nuclide, and of a parent with its daughter: activity later, equilibrium, half-lives fitted."""

import math
from collections.abc import Iterable

from clampstand.units import OutOfRange, Quantity, Takes, exp, formula, ln, number_in, quantity

LN2 = math.log(2)
AVOGADRO = quantity(6.02214076e23, "1/mol")  # exact: SI brochure, 9th edition (2019)
ONE_DECAY = quantity(1, "decay")  # each atom decays once


@formula("1/s", "λ = ln 2 / T½", half_life=Takes("s", more_than=0))
def decay_constant(half_life: Quantity) -> Quantity:
    """Chance of decay per unit time.

    λ in 1/s, half-life T½ in s; holds for any T½ above zero.
    Source: definition, ICRU Report 85a (2011), section 6.

    >>> print(f"{decay_constant(quantity(55.6, 's')):.4g~P}")
    0.01247 1/s
    """
    return LN2 / half_life


@formula("s", "τ = T½ / ln 2", half_life=Takes("s", more_than=0))
def mean_life(half_life: Quantity) -> Quantity:
    """Average time an atom lasts: 1.4427 half-lives, not one.

    τ and T½ in s; holds for any T½ above zero. Source: definition, ICRU Report 85a (2011).

    >>> print(f"{mean_life(quantity(55.6, 's')):.2f~P}")
    80.21 s
    """
    return half_life / LN2


@formula("", "A/A₀ = 2^(−t/T½)", half_life=Takes("s", more_than=0), elapsed=Takes("s", at_least=0))
def share_left(half_life: Quantity, elapsed: Quantity) -> Quantity:
    """Share of a pure nuclide that has not decayed yet, and so of its activity.

    Elapsed t and half-life T½ in s. Holds for t from zero on, for a nuclide that nothing feeds.
    Source: the law of radioactive decay (Rutherford and Soddy 1902).

    >>> print(f"{share_left(quantity(5, 'year'), quantity(15, 'year')):.3f~P}")
    0.125
    """
    return exp(-LN2 * elapsed / half_life)


@formula(
    "Bq",
    "A = A₀ · 2^(−t/T½)",
    activity=Takes("Bq", at_least=0),
    half_life=Takes("s", more_than=0),
    elapsed=Takes("s", at_least=0),
)
def activity_after(activity: Quantity, half_life: Quantity, elapsed: Quantity) -> Quantity:
    """Activity of a pure nuclide some time after it was measured.

    A, A₀ in Bq; elapsed t and half-life T½ in s. Holds for t from zero on, for a nuclide that nothing feeds.
    Source: the law of radioactive decay (Rutherford and Soddy 1902).

    >>> cobalt = activity_after(quantity(185, "kBq"), quantity(5.2713, "year"), quantity(10, "year"))
    >>> print(f"{cobalt.to('kBq'):.1f~P}")
    49.7 kBq
    """
    return activity * share_left.body(half_life, elapsed)


@formula(
    "Bq/kg",
    "a = ln 2 · N_A / (T½ · M)",
    half_life=Takes("s", more_than=0),
    molar_mass=Takes("kg/mol", more_than=0),
    avogadro=Takes("1/mol", more_than=0),
    decays_per_atom=Takes("decay", more_than=0),
)
def specific_activity(
    half_life: Quantity,
    molar_mass: Quantity,
    avogadro: Quantity = AVOGADRO,
    decays_per_atom: Quantity = ONE_DECAY,
) -> Quantity:
    """Activity per mass of the pure nuclide.

    a in Bq/kg, T½ in s, molar mass M in kg/mol, Avogadro constant N_A in 1/mol.
    Holds for the nuclide alone, without carrier or progeny. Source: definition; N_A is exact (SI, 2019).

    >>> print(f"{specific_activity(quantity(1600, 'year'), quantity(226.025, 'g/mol')).to('GBq/g'):.2f~P}")
    36.58 GBq/g
    """
    return decays_per_atom * LN2 * avogadro / (half_life * molar_mass)


@formula(
    "kg",
    "m = A · T½ · M / (ln 2 · N_A)",
    activity=Takes("Bq", at_least=0),
    half_life=Takes("s", more_than=0),
    molar_mass=Takes("kg/mol", more_than=0),
    avogadro=Takes("1/mol", more_than=0),
    decays_per_atom=Takes("decay", more_than=0),
)
def mass_for_activity(
    activity: Quantity,
    half_life: Quantity,
    molar_mass: Quantity,
    avogadro: Quantity = AVOGADRO,
    decays_per_atom: Quantity = ONE_DECAY,
) -> Quantity:
    """Mass of the pure nuclide that has an activity.

    m in kg, A in Bq, T½ in s, M in kg/mol, N_A in 1/mol. Holds for the nuclide alone. Source: definition.

    >>> radium = mass_for_activity(quantity(185, "kBq"), quantity(1600, "year"), quantity(226.025, "g/mol"))
    >>> print(f"{radium.to('ug'):.2f~P}")
    5.06 ug
    """
    return activity * half_life * molar_mass / (decays_per_atom * LN2 * avogadro)


@formula(
    "Bq/kg",
    "a = ln 2 · N_A · x · n / (T½ · M)",
    half_life=Takes("s", more_than=0),
    abundance=Takes("", at_least=0, at_most=1),
    atoms=Takes("", at_least=0),
    molar_mass=Takes("kg/mol", more_than=0),
    avogadro=Takes("1/mol", more_than=0),
    decays_per_atom=Takes("decay", more_than=0),
)
def activity_per_mass_of_compound(
    half_life: Quantity,
    abundance: Quantity,
    atoms: Quantity,
    molar_mass: Quantity,
    avogadro: Quantity = AVOGADRO,
    decays_per_atom: Quantity = ONE_DECAY,
) -> Quantity:
    """Activity per mass of a substance whose element holds a radioactive isotope, such as K-40 in KCl.

    a in Bq/kg; isotope's share x of the element's atoms (0 to 1); n atoms of the element in a formula unit;
    T½ in s; M of the substance in kg/mol. Holds for a pure substance of natural isotopic make-up.
    Source: definition.

    >>> kcl = activity_per_mass_of_compound(
    ...     quantity(1.251e9, "year"), quantity(1.17e-4, ""), quantity(1, ""), quantity(74.5513, "g/mol"))
    >>> print(f"{kcl.to('Bq/g'):.1f~P}")
    16.6 Bq/g
    """
    return decays_per_atom * LN2 * avogadro * abundance * atoms / (half_life * molar_mass)


@formula(
    "s",
    "T = t · ln 2 / ln(A₁/A₂)",
    first=Takes("Bq", more_than=0),
    second=Takes("Bq", more_than=0),
    interval=Takes("s", more_than=0),
)
def half_life_from_two(first: Quantity, second: Quantity, interval: Quantity) -> Quantity:
    """Half-life that takes one activity to another: of a mixture, the effective half-life over that window.

    T and interval t in s; activities A₁ then A₂ in Bq. Of a mixture it holds for its own window only.
    Source: law of radioactive decay, solved for T½. An activity that does not fall raises OutOfRange.

    >>> halved_twice = half_life_from_two(quantity(80, "Bq"), quantity(20, "Bq"), quantity(10, "min"))
    >>> print(f"{halved_twice.to('min'):.1f~P}")
    5.0 min
    """
    fall = ln(first / second)
    if fall <= 0:
        raise OutOfRange("the activity does not fall between the two, so it has no half-life")
    return interval * LN2 / fall


@formula(
    "",
    "A₂/A₁ = T₁ / (T₁ − T₂)",
    parent_half_life=Takes("s", more_than=0),
    daughter_half_life=Takes("s", more_than=0),
)
def transient_equilibrium_ratio(parent_half_life: Quantity, daughter_half_life: Quantity) -> Quantity:
    """Daughter's activity over its parent's, once the daughter follows the parent (single branch).

    Half-lives T₁ of the parent and T₂ of the daughter in s. Holds when T₁ is longer than T₂ and some seven T₂
    have passed. Source: Bateman (1910), two members, late times.

    >>> print(f"{transient_equilibrium_ratio(quantity(10.64, 'h'), quantity(60.55, 'min')):.4f~P}")
    1.1048
    """
    if parent_half_life <= daughter_half_life:
        raise OutOfRange("there is no equilibrium: the daughter lives as long as its parent, or longer")
    return parent_half_life / (parent_half_life - daughter_half_life)


def secular_equilibrium_activity(
    parent_activity: Quantity,
    parent_half_life: Quantity,
    daughter_half_life: Quantity,
    branching: Quantity,
) -> Quantity:
    """Daughter's activity when a parent far longer-lived has fed it for long: A₂ = b·A₁.

    Activities in Bq, half-lives in s, branching b from 0 to 1. Holds when the parent's half-life is at least
    a hundred times the daughter's, so that the neglected factor is under 1 %.
    Source: Bateman (1910), limit of a long-lived parent.

    >>> barium = secular_equilibrium_activity(
    ...     quantity(370, "kBq"), quantity(30.1671, "year"), quantity(2.552, "min"), quantity(0.94399, ""))
    >>> print(f"{barium.to('kBq'):.1f~P}")
    349.3 kBq
    """
    if parent_half_life < 100 * daughter_half_life:
        raise OutOfRange("the parent is not a hundred times longer-lived than its daughter")
    if not 0 <= branching.m_as("") <= 1:
        raise OutOfRange("a branching fraction lies between 0 and 1")
    return parent_activity.to("Bq") * branching.to("")


def time_of_greatest_daughter(parent_half_life: Quantity, daughter_half_life: Quantity) -> Quantity:
    """Time after which a daughter grown from a pure parent is most active.

    t = ln(λ₂/λ₁)/(λ₂−λ₁), in s; for equal half-lives the mean life. Holds for any two half-lives.
    Source: Bateman (1910), where the daughter's rate of change is nil.

    >>> print(f"{time_of_greatest_daughter(quantity(10.64, 'h'), quantity(60.55, 'min')).to('min'):.1f~P}")
    227.3 min
    """
    mean = mean_life(parent_half_life)
    excess = number_in((mean / mean_life(daughter_half_life)), "") - 1
    return mean * (math.log1p(excess) / excess if abs(excess) > 1e-12 else 1.0)


def fitted_half_life(times: Iterable[Quantity], activities: Iterable[Quantity]) -> Quantity:
    """Effective half-life of a mixture over a window: least-squares slope of ln A against time.

    Times in s, activities in Bq, at least two of each, falling over the window. Of a mixture it holds for its
    own window only. Source: ordinary least squares.

    >>> minutes = [quantity(t, "min") for t in (0, 10, 20)]
    >>> print(f"{fitted_half_life(minutes, [quantity(a, 'Bq') for a in (80, 40, 20)]).to('min'):.2f~P}")
    10.00 min
    """
    ts = [number_in(t, "s") for t in times]
    sizes = [number_in(a, "Bq") for a in activities]
    if len(ts) != len(sizes) or len(set(ts)) < 2 or min(sizes, default=0) <= 0:
        raise OutOfRange("a fit needs two times or more, each with an activity above zero")
    mean_t = sum(ts) / len(ts)
    spread = sum((t - mean_t) ** 2 for t in ts)
    slope = sum((t - mean_t) * math.log(a) for t, a in zip(ts, sizes, strict=True)) / spread
    if slope >= 0:
        raise OutOfRange("the activity does not fall over the window, so it has no half-life")
    return quantity(-LN2 / slope, "s")
