"""Dose: constants against published ones, laws of distance and time, and slips of unit and cut-off."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from clampstand.physics import dose, dose_rules
from clampstand.units import OutOfRange, Quantity, UnlikeUnits, q, quantity
from physics.cases.radiation import ambient_constant, exposure_constant, kerma_constant
from physics.reference import curve, materials, nuclides

KERMA, AMBIENT = "uGy*m**2/(GBq*h)", "uSv*m**2/(GBq*h)"
distances = st.floats(0.01, 100)


def kerma(source: str, kiloelectronvolts: float = 20) -> float:
    cutoff = {"value": kiloelectronvolts, "unit": "keV"}
    return float(kerma_constant({"source": source, "photon_energy_cutoff": cutoff}).m_as(KERMA))


def ambient(source: str) -> float:
    return float(ambient_constant({"source": source}).m_as(AMBIENT))


def test_constants_against_ninkovic_2012() -> None:
    """Ninkovic and others (2012): cobalt-60 309.0; 82.1 for caesium-137 is per decay of barium-137m."""
    assert kerma("Co-60") == pytest.approx(309.0, rel=0.015)
    assert kerma("Ba-137m") == pytest.approx(82.1, rel=0.015)


@pytest.mark.parametrize(("source", "published"), [("Co-60", 12.9), ("Ba-137m", 3.43), ("K-40", 0.779)])
def test_constants_against_smith_and_stabin_2012(source: str, published: float) -> None:
    ours = exposure_constant({"source": source, "photon_energy_cutoff": {"value": 15, "unit": "keV"}})
    assert ours.m_as("R*cm**2/(mCi*h)") == pytest.approx(published, rel=0.02)


@pytest.mark.parametrize(("source", "effective"), [("Co-60", 306.2), ("Ba-137m", 82.28), ("Am-241", 5.413)])
def test_ambient_dose_lies_above_effective_dose(source: str, effective: float) -> None:
    """Effective dose, antero-posterior, by ICRP Publication 116 (Peplow 2020)."""
    assert effective < ambient(source) < 1.5 * effective


def test_ambient_dose_is_not_air_kerma() -> None:
    assert ambient("Cs-137") / kerma("Cs-137") == pytest.approx(1.20, abs=0.01)
    assert ambient("Co-60") / kerma("Co-60") == pytest.approx(1.14, abs=0.01)
    line = quantity(59.5412, "keV"), quantity(1, "1/decay")
    at_59 = dose.ambient_constant_of_line(line[1], curve("ambient-dose.per-fluence").at(line[0]))
    air = dose.kerma_constant_of_line(*line, curve("dry-air.energy-absorption").at(line[0]))
    assert at_59.m_as(AMBIENT) / air.m_as(KERMA) == pytest.approx(1.74, abs=0.02)
    with pytest.raises(UnlikeUnits):
        dose.ambient_dose_rate(air, q("185 kBq"), q("100 mm"))


def test_the_cut_off_belongs_to_the_constant() -> None:
    """Americium-241 has 16.4, 5.36 or 3.07 by the cut-off, and a published 3.97 in between."""
    assert kerma("Am-241", 15) == pytest.approx(16.4, rel=0.06)
    assert kerma("Am-241", 20) == pytest.approx(5.36, rel=0.06)
    assert kerma("Am-241", 30) == pytest.approx(3.07, rel=0.06)


def test_662_kev_photons_are_counted_per_decay_of_caesium() -> None:
    """0.897 photons belong to barium-137m; per decay of caesium-137 there are 0.847 to 0.851."""
    barium = nuclides()["Ba-137m"].strongest("gamma")
    assert barium is not None
    assert barium.per_decay.magnitude * nuclides()["Cs-137"].progeny["Ba-137m"] == pytest.approx(
        0.847, abs=0.005
    )
    assert kerma("Cs-137") / kerma("Ba-137m") == pytest.approx(0.944, abs=1e-3)


def test_microsieverts_per_gigabecquerel_not_per_megabecquerel() -> None:
    """185 kBq of cobalt-60 give 6.4 µSv/h at 10 cm, not 6.4 nSv/h."""
    rate = dose.ambient_dose_rate(quantity(348.266, AMBIENT), q("185 kBq"), q("10 cm"))
    assert rate.m_as("uSv/h") == pytest.approx(6.44, rel=0.01)


def test_six_cen_is_at_one_foot_not_at_one_metre() -> None:
    given_source = q("5 µCi"), quantity(1.25, "MeV"), quantity(2, "1/decay")
    at_a_foot = dose_rules.exposure_rate_by_six_cen(*given_source)
    at_a_metre = dose_rules.exposure_rate_by_six_cen(*given_source, q("1 m"))
    assert at_a_foot.m_as("uR/h") == pytest.approx(75)
    assert (at_a_foot / at_a_metre).m_as("") == pytest.approx(1 / constants.foot**2)
    assert 1 / constants.foot**2 == pytest.approx(10.76, abs=0.01)


def test_six_cen_is_near_the_computed_constant_of_cobalt() -> None:
    """The rule gives 75 µR/h where line data give 69.4 µR/h."""
    cutoff = {"photon_energy_cutoff": {"value": 20, "unit": "keV"}}
    computed = exposure_constant({"source": "Co-60", **cutoff}) * q("5 µCi") / q("1 ft") ** 2
    assert computed.m_as("uR/h") == pytest.approx(69.4, rel=0.01)
    with pytest.raises(OutOfRange, match="energy"):
        dose_rules.exposure_rate_by_six_cen(q("5 µCi"), q("59.54 keV"), quantity(0.36, "1/decay"))


def test_rule_of_300_is_near_first_principles_for_yttrium() -> None:
    """First principles for yttrium-90 alone give 17.5 µGy/h at 30 cm."""
    rate = dose_rules.beta_dose_rate_by_rule(q("5 µCi"), q("30 cm"))
    assert rate.m_as("uGy/h") == pytest.approx(17.5, rel=0.15)


# Rad Data Handbook (Voss Associates), beta dose rates: end point in MeV, cm away, rad/h for each mCi.
BETAS_IN_AIR = [
    (0.5, 10, 5.2), (0.5, 30, 0.4), (0.5, 60, 0.05),
    (1.0, 10, 4.6), (1.0, 30, 0.4), (1.0, 60, 0.1),
    (2.25, 10, 3.3), (2.25, 30, 0.4), (2.25, 60, 0.1), (2.25, 90, 0.04), (2.25, 100, 0.02),
]  # fmt: skip


@pytest.mark.parametrize(("endpoint", "centimetres", "rads"), BETAS_IN_AIR)
def test_rule_of_300_is_within_a_factor_of_two_of_a_published_table(endpoint, centimetres, rads) -> None:
    rate = dose_rules.beta_dose_rate_by_rule(quantity(1, "mCi"), quantity(centimetres, "cm"))
    assert rads / 2 < rate.m_as("rad_dose/h") < rads * 2


@pytest.mark.parametrize(
    ("endpoint", "centimetres", "rads"), [(0.5, 90, 0.01), (0.75, 90, 0.01), (0.5, 100, 0)]
)
def test_farther_off_the_rule_of_300_is_an_upper_bound(endpoint, centimetres, rads) -> None:
    """The same table, where air has taken most of the softer betas."""
    rate = dose_rules.beta_dose_rate_by_rule(quantity(1, "mCi"), quantity(centimetres, "cm"))
    assert rate.m_as("rad_dose/h") > rads


def test_betas_that_do_not_reach_so_far_count_for_nothing() -> None:
    """A curie in each of two branches gives twice 300 rad/h at one foot, one alone once: the rule itself."""
    soft = dose_rules.BetaBranch(quantity(1, "1/decay"), quantity(1.5, "m"))
    hard = dose_rules.BetaBranch(quantity(1, "1/decay"), quantity(9, "m"))
    curie, foot = quantity(1, "Ci"), quantity(1, "ft")
    both = dose_rules.skin_dose_rate_of_betas([soft, hard], curie, foot)
    assert both.m_as("rem/h") == pytest.approx(600, rel=1e-9)
    far = dose_rules.skin_dose_rate_of_betas([soft, hard], curie, 10 * foot)
    assert far.m_as("rem/h") == pytest.approx(3, rel=1e-9)
    assert dose_rules.skin_dose_rate_of_betas([soft, hard], curie, quantity(20, "m")).magnitude == 0


@given(distances, distances)
def test_rate_falls_with_the_square_of_distance(near: float, far: float) -> None:
    rates = [
        dose.ambient_dose_rate(quantity(348, AMBIENT), q("185 kBq"), quantity(d, "m")) for d in (near, far)
    ]
    ratio = dose.rate_ratio(quantity(near, "m"), quantity(far, "m"))
    assert (rates[0] / rates[1]).m_as("") == pytest.approx(ratio.magnitude, rel=1e-9)


@given(st.floats(0.1, 1e9), distances)
def test_activity_and_distance_for_a_rate_undo_the_rate(activity: float, distance: float) -> None:
    constant, a, d = quantity(92.2, AMBIENT), quantity(activity, "Bq"), quantity(distance, "m")
    rate = dose.ambient_dose_rate(constant, a, d)
    assert dose.activity_for_rate(constant, d, rate).m_as("Bq") == pytest.approx(activity, rel=1e-9)
    assert dose.distance_for_rate(constant, a, rate).m_as("m") == pytest.approx(distance, rel=1e-9)


@given(st.floats(0, 1e4), st.floats(0, 1e6), st.floats(0, 1e6))
def test_dose_adds_up_over_time(rate: float, first: float, second: float) -> None:
    r = quantity(rate, "uSv/h")
    parts = dose.dose(r, quantity(first, "s")) + dose.dose(r, quantity(second, "s"))
    assert parts.m_as("Sv") == pytest.approx(dose.dose(r, quantity(first + second, "s")).m_as("Sv"), rel=1e-9)


@pytest.mark.parametrize("distance", ["0 mm", "9 mm"])
def test_at_contact_the_point_law_is_refused(distance: str) -> None:
    with pytest.raises(OutOfRange, match="distance"):
        dose.ambient_dose_rate(quantity(348, AMBIENT), q("185 kBq"), q(distance))
    with pytest.raises(OutOfRange, match="distance"):
        dose.air_kerma_rate(quantity(306, KERMA), q("185 kBq"), q(distance))


def test_nearest_distance_is_where_a_small_disc_is_still_a_point() -> None:
    share = dose.disc_share(quantity(dose.NEAREST, "m"), q("2.5 mm"))
    assert pytest.approx(share.magnitude, abs=0.005) == 0.97
    assert dose.disc_share(q("35 mm"), q("5 mm")).magnitude == pytest.approx(0.99, abs=0.002)
    for distance, radius in ((q("0 mm"), q("5 mm")), (q("5 mm"), q("0 mm"))):
        with pytest.raises(OutOfRange):
            dose.disc_share(distance, radius)


def test_distance_from_the_capsules_face_is_not_the_distance_that_counts() -> None:
    """With source and detector 9 mm deep together, doubling the face distance does not quarter the rate."""
    rate = dose.count_rate_at_distance(quantity(100, "count/s"), q("30 mm"), q("60 mm"), q("9 mm"))
    assert rate.m_as("count/s") == pytest.approx(100 * (39 / 69) ** 2)


def test_background_comparison() -> None:
    background = materials()["surroundings"].quantity("natural-background")
    assert background.m_as("uSv/h") == pytest.approx(0.274, rel=0.002)
    minutes = dose.background_time(q("0.1 µSv"), background)
    assert minutes.m_as("min") == pytest.approx(0.1 / 0.27379101 * 60, rel=0.002)


def test_a_rate_is_not_a_dose() -> None:
    with pytest.raises(UnlikeUnits):
        dose.background_time(q("1 µSv/h"), q("2.4 mSv/year"))


@given(st.floats(1e-6, 1e3))
def test_exposure_and_kerma_undo_each_other(roentgens: float) -> None:
    exposure: Quantity = quantity(roentgens, "R")
    back = dose.exposure_from_air_kerma(
        dose.air_kerma_from_exposure(exposure, quantity(33.97, "J/C")), quantity(33.97, "J/C")
    )
    assert back.m_as("R") == pytest.approx(roentgens, rel=1e-12)
