"""Rules of thumb for dose rates, kept apart from the formulae that have a physical ground."""

from clampstand.units import Quantity, Takes, formula, quantity

MEV = 1.602176634e-13
ONE_FOOT = quantity(1, "ft")
SIX = quantity(6, "R*ft**2*decay/(Ci*MeV*h)").to("C/kg*m**2/J")
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
    distance=Takes("m", at_least=0.1, at_most=1),
    three_hundred=Takes("Gy*m**2/decay", more_than=0),
)
def beta_dose_rate_by_rule(
    activity: Quantity,
    distance: Quantity = ONE_FOOT,
    three_hundred: Quantity = THREE_HUNDRED,
) -> Quantity:
    """Dose rate to skin from a small beta source by the rule of 300, in Gy/s.

    Three hundred rads an hour at one foot from each curie, whatever the beta energy between about 0.5 MeV and
    3 MeV; A in Bq, d in m from 0.1 m to 1 m, for betas that air does not stop. Good to a factor of two.
    Source: health physicists' rule of thumb, common practice.

    >>> print(f"{beta_dose_rate_by_rule(quantity(5, 'uCi')).to('uGy/h'):.1f~P}")
    15.0 uGy/h
    """
    return three_hundred * activity / distance**2
