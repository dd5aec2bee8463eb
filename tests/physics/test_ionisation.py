"""Ions and sparks: against published figures, and past slips of W, solid angle and Paschen's constants."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq, minimize_scalar

from clampstand.physics import ionisation
from clampstand.units import OutOfRange, q, quantity
from physics.reference import materials

ENERGY = quantity(5.4856, "MeV")
ALPHAS = materials()["dry-air"].quantity("energy-per-ion-pair-by-alphas")
ELECTRONS = materials()["dry-air"].quantity("energy-per-ion-pair-by-electrons")
A, B, GAMMA = quantity(112.501, "1/(kPa*cm)"), quantity(2737.5, "V/(kPa*cm)"), quantity(0.01, "")


def current(share: float, w: object = ALPHAS) -> float:
    return float(ionisation.saturation_current(q("185 kBq"), ENERGY, quantity(share, ""), w).m_as("nA"))


def test_half_of_a_flat_sources_alphas_enter_the_gas() -> None:
    """2.32 nA; with both halves it would be 4.63 nA."""
    assert current(0.5) == pytest.approx(2.32, rel=0.01)
    assert current(1.0) == pytest.approx(4.63, rel=0.01)


def test_w_of_electrons_is_3_per_cent_off_for_alphas() -> None:
    assert current(0.5, ELECTRONS) / current(0.5) == pytest.approx(1.033, abs=0.001)


def test_w_over_e_in_joules_per_coulomb_is_w_in_electronvolts() -> None:
    assert (ELECTRONS / ionisation.ELEMENTARY_CHARGE).m_as("J/C") == pytest.approx(33.97)


@given(st.floats(0, 1e9), st.floats(0.1, 9))
def test_current_is_pairs_times_charge(activity: float, energy: float) -> None:
    e = quantity(energy, "MeV")
    i = ionisation.saturation_current(quantity(activity, "Bq"), e, quantity(1, ""), ALPHAS)
    pairs = ionisation.ion_pairs(e, ALPHAS).magnitude
    assert i.m_as("A") == pytest.approx(activity * pairs * 1.602176634e-19, rel=1e-12)


def test_electroscope_falls_more_slowly_with_more_capacitance() -> None:
    times = [
        ionisation.electroscope_fall_time(quantity(c, "pF"), q("500 V"), q("1 nA")).m_as("s")
        for c in (10, 20)
    ]
    assert times == pytest.approx([5, 10])


def test_two_published_forms_of_breakdown_agree_near_a_centimetre_only() -> None:
    field = materials()["dry-air"].quantity("breakdown-field")
    for gap, rel in (("10 mm", 0.02), ("1 mm", 0.35)):
        customary = ionisation.breakdown_voltage_at_field(field, q(gap)).m_as("kV")
        assert customary == pytest.approx(ionisation.breakdown_voltage(q(gap)).m_as("kV"), rel=rel)


def test_five_kilovolts_flash_over_less_by_the_finer_formula() -> None:
    """1.67 mm by the customary field, 1.21 mm by the formula of high-voltage texts."""
    field = materials()["dry-air"].quantity("breakdown-field")
    assert ionisation.gap_flashed_over(q("5 kV"), field).m_as("mm") == pytest.approx(1.67, rel=0.01)
    assert ionisation.breakdown_voltage(quantity(1.21, "mm")).m_as("kV") == pytest.approx(5, rel=0.01)


def test_thin_air_breaks_down_sooner() -> None:
    thin = ionisation.breakdown_voltage(q("10 mm"), quantity(0.8, ""))
    assert thin < ionisation.breakdown_voltage(q("10 mm"))


def test_misprinted_paschen_constants_show_at_a_centimetre() -> None:
    """43.6e6 and 12.8, printed on a page that doubts itself, give 53 kV; 1 cm of air stands about 30 kV."""
    bars_and_metres = q("1 cm"), quantity(1.01325e5, "Pa")
    product = 1.01325 * 0.01 / 1.01325
    wrong = 43.6e6 * product / (math.log(product) + 12.8)
    right = ionisation.paschen_voltage(bars_and_metres[1], bars_and_metres[0], A, B, GAMMA).m_as("V")
    assert wrong == pytest.approx(53e3, rel=0.02)
    assert right == pytest.approx(30e3, rel=0.2)


def test_least_voltage_of_paschen_is_the_bottom_of_its_curve() -> None:
    def volts(gap: float) -> float:
        return float(ionisation.paschen_voltage(q("100 kPa"), quantity(gap, "um"), A, B, GAMMA).m_as("V"))

    found = minimize_scalar(volts, bounds=(5, 50), method="bounded", options={"xatol": 1e-8})
    assert ionisation.paschen_least_voltage(A, B, GAMMA).m_as("V") == pytest.approx(found.fun, rel=1e-6)


def test_a_gap_left_of_the_pole_is_refused() -> None:
    with pytest.raises(OutOfRange, match="Paschen"):
        ionisation.paschen_voltage(q("100 kPa"), quantity(1, "um"), A, B, GAMMA)


def _balance(share: float, squared: float) -> float:
    return squared * share**2 + share - 1


def test_the_share_gathered_is_straight_first_and_nine_tenths_where_it_should_be() -> None:
    """Thomson's balance n² + n·V = 1 in its own units, solved by bisection, and its two ends."""
    gathered = ionisation.share_gathered
    knee = quantity(1, "kV")
    for kilovolts in (0.03, 0.3, 1.0, 3.0):
        squared = (10 / 81) / kilovolts**2
        root = brentq(_balance, 0, 1, args=(squared,), xtol=1e-14)
        share = gathered(quantity(kilovolts, "kV"), knee).m_as("")
        assert share == pytest.approx(root, rel=1e-9)
    low, twice = (gathered(quantity(v, "V"), knee).m_as("") for v in (1, 2))
    assert twice / low == pytest.approx(2, rel=0.01)
    lost, lost_at_twice = (1 - gathered(quantity(v, "kV"), knee).m_as("") for v in (20, 40))
    assert lost / lost_at_twice == pytest.approx(4, rel=0.01)
