"""Rules of thumb for dose rates, kept apart from the formulae that have a physical ground."""

from collections.abc import Iterable
from typing import NamedTuple

from clampstand.units import Quantity, Takes, formula, number_in, quantity

MEV = 1.602176634e-13
ONE_FOOT = quantity(1, "ft")
SIX = quantity(6, "R*ft**2*decay/(Ci*MeV*h)").to("C/kg*m**2/J")
SIEVERT_PER_GRAY_OF_BETAS = quantity(1, "Sv/Gy")
"""The radiation weighting factor of electrons. Source: ICRP Publication 103 (2007), table 2."""
THREE_HUNDRED = quantity(300, "rad_dose*ft**2/(Ci*h)").to("Gy*m**2/decay")


@formula(
    "C/(kg*s)",
    "Ẋ = 6 · C · E · n, at one foot",
    activity=Takes("Bq", at_least=0),
    energy=Takes("J", at_least=0.07 * MEV, at_most=2 * MEV),
    photons_per_decay=Takes("1/decay", at_least=0),
    distance=Takes("m", at_least=0.1),
    six=Takes("C/kg*m**2/J", more_than=0),
)
def exposure_rate_by_six_cen(
    activity: Quantity,
    energy: Quantity,
    photons_per_decay: Quantity,
    distance: Quantity = ONE_FOOT,
    six: Quantity = SIX,
) -> Quantity:
    """Exposure rate of a small gamma source by the 6CEN rule, in C/(kg s).

    Six roentgens an hour at one *foot* (not one metre: a factor of 10.8) for one curie, one MeV and one
    photon a decay. Mean photon energy E from 0.07 MeV to 2 MeV, distance from 0.1 m on; good to some 20 %.
    Source: health physicists' rule of thumb, common practice.

    >>> rate = exposure_rate_by_six_cen(quantity(5, "uCi"), quantity(1.25, "MeV"), quantity(2, "1/decay"))
    >>> print(f"{rate.to('uR/h'):.1f~P}")
    75.0 uR/h
    """
    return six * activity * energy * photons_per_decay / distance**2


@formula(
    "Gy/s",
    "Ḋ = 300 rad/h for each curie, at one foot",
    activity=Takes("Bq", at_least=0),
    distance=Takes("m", at_least=0.1, at_most=12),
    three_hundred=Takes("Gy*m**2/decay", more_than=0),
)
def beta_dose_rate_by_rule(
    activity: Quantity,
    distance: Quantity = ONE_FOOT,
    three_hundred: Quantity = THREE_HUNDRED,
) -> Quantity:
    """Dose rate to skin from a small beta source by the rule of 300, in Gy/s.

    Three hundred rads an hour at one foot from each curie, whatever the beta energy between about 0.5 MeV and
    3 MeV; A in Bq, one beta a decay, d in m from 0.1 m on. Good to a factor of two up to 0.6 m, up to 1 m for
    betas of 1.25 MeV and more; farther off an upper bound, for what air takes away is left out.
    The absorption formula of Martin and Lee (2003), in answer 9852 there, gives three times as much.
    Source: Health Physics Society, Ask the Experts, answer 13419.

    >>> print(f"{beta_dose_rate_by_rule(quantity(5, 'uCi')).to('uGy/h'):.1f~P}")
    15.0 uGy/h
    """
    return three_hundred * activity / distance**2


class BetaBranch(NamedTuple):
    """Betas of one end point: how many a decay (unit 1/decay), and the greatest range they have in air."""

    per_decay: Quantity
    reach: Quantity


def skin_dose_rate_of_betas(
    branches: Iterable[BetaBranch], activity: Quantity, distance: Quantity
) -> Quantity:
    """Dose rate to skin, H′(0.07), of a small bare source whose betas have several end points, in Sv/s.

    The rule of 300 for every branch that reaches so far; none of the others. Range and source as
    :func:`beta_dose_rate_by_rule`. Never to be added to the dose of the body, which is another quantity.

    >>> strontium = BetaBranch(quantity(1, "1/decay"), quantity(1.5, "m"))
    >>> yttrium = BetaBranch(quantity(1, "1/decay"), quantity(9, "m"))
    >>> near, far = (skin_dose_rate_of_betas([strontium, yttrium], quantity(100, "kBq"), quantity(d, "m"))
    ...              for d in (0.1, 2))
    >>> print(f"{near.to('uSv/h'):.0f~P}, {far.to('uSv/h'):.3f~P}")
    151 uSv/h, 0.188 uSv/h
    """
    metres = number_in(distance, "m")
    reaching = (branch for branch in branches if number_in(branch.reach, "m") >= metres)
    betas = sum(number_in(branch.per_decay, "1/decay") for branch in reaching)
    if not betas:
        return quantity(0, "Sv/s")
    return SIEVERT_PER_GRAY_OF_BETAS * beta_dose_rate_by_rule(activity * betas, distance)
