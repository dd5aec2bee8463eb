"""Ranges of alphas and betas: rules against tables, densities, covers, and what a range is the range of."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from clampstand.physics import ranges
from clampstand.units import OutOfRange, q, quantity
from physics.reference import coefficients, curve, materials

AIR = materials()["dry-air"].quantity("density")
AMERICIUM = quantity(5.4856, "MeV")
ALPHA_TABLES = [name for name in coefficients() if name.endswith("alpha-range")]
ELECTRON_TABLES = [name for name in coefficients() if name.endswith("electron-range")]


@pytest.mark.parametrize("energy", [4, 5, 6, 7, 8])
def test_the_straight_line_rule_is_near_the_table(energy: float) -> None:
    """The rule is for 15 °C; the table's air is brought there by its density."""
    at_15 = ranges.range_at_density(
        ranges.particle_range(quantity(energy, "MeV"), curve("dry-air.alpha-range"), AIR),
        AIR,
        q("1.2256 kg/m³"),
    )
    rule = ranges.alpha_air_range_by_rule(quantity(energy, "MeV"))
    assert rule.m_as("cm") == pytest.approx(at_15.m_as("cm"), rel=0.1 if energy < 5 else 0.03)


def test_the_rule_is_refused_outside_its_energies() -> None:
    for energy in (3.9, 8.1):
        with pytest.raises(OutOfRange, match="energy"):
            ranges.alpha_air_range_by_rule(quantity(energy, "MeV"))


def test_range_in_air_needs_the_air_of_the_room() -> None:
    """At 20 °C americium-241's alphas reach 4.17 cm; with the density of 0 °C it would be 3.89 cm."""
    assert ranges.particle_range(AMERICIUM, curve("dry-air.alpha-range"), AIR).m_as("cm") == pytest.approx(
        4.17, rel=0.02
    )
    cold = ranges.particle_range(AMERICIUM, curve("dry-air.alpha-range"), q("1.293 kg/m³"))
    assert cold.m_as("cm") == pytest.approx(3.89, rel=0.02)


@given(st.floats(1, 5))
def test_a_cover_shortens_the_range_by_itself(energy: float) -> None:
    table = curve("dry-air.alpha-range")
    left = ranges.energy_left(AMERICIUM, table.at(AMERICIUM) - table.at(quantity(energy, "MeV")), table)
    assert left.m_as("MeV") == pytest.approx(energy, rel=1e-6)


def test_a_cover_that_stops_everything_is_refused() -> None:
    with pytest.raises(OutOfRange):
        ranges.energy_left(AMERICIUM, quantity(6, "mg/cm**2"), curve("dry-air.alpha-range"))
    with pytest.raises(OutOfRange, match="below zero"):
        ranges.energy_left(AMERICIUM, quantity(-1, "mg/cm**2"), curve("dry-air.alpha-range"))


@pytest.mark.parametrize("name", [*ALPHA_TABLES, *ELECTRON_TABLES])
def test_range_tables_rise_with_energy(name: str) -> None:
    ys = [y for _, y in coefficients()[name].rows]
    assert ys == sorted(set(ys))


@pytest.mark.parametrize(
    ("name", "grams"),
    [
        ("water.electron-range", 0.4367),
        ("dry-air.electron-range", 0.4912),
        ("aluminium.electron-range", 0.5546),
    ],
)
def test_electron_ranges_at_one_mev_against_estar(name: str, grams: float) -> None:
    """ESTAR's own column; a package's range column that is 10 % low gives 0.3937 for water."""
    assert curve(name).at(quantity(1, "MeV")).m_as("g/cm**2") == pytest.approx(grams, rel=0.002)


def test_path_length_is_not_depth() -> None:
    """Yttrium-90 in aluminium: 5.21 mm of path for the fastest, but the last of them ends at 4.06 mm."""
    aluminium = materials()["aluminium"].quantity("density")
    path = ranges.particle_range(quantity(2.2798, "MeV"), curve("aluminium.electron-range"), aluminium)
    depth = ranges.thickness_of(ranges.beta_greatest_range(quantity(2.2785, "MeV")), aluminium)
    assert path.m_as("mm") == pytest.approx(5.21, rel=0.015)
    assert depth.m_as("mm") == pytest.approx(4.06, rel=0.01)


def test_the_two_parts_of_katz_and_penfold_meet() -> None:
    below = ranges.beta_greatest_range(quantity(2.5, "MeV"))
    above = ranges.beta_greatest_range(quantity(2.5000001, "MeV"))
    assert above.m_as("kg/m**2") == pytest.approx(below.m_as("kg/m**2"), rel=0.01)


@given(st.floats(0.01, 19), st.floats(0.01, 19))
def test_faster_betas_reach_deeper(first: float, second: float) -> None:
    slow, fast = sorted((first, second))
    reach = [ranges.beta_greatest_range(quantity(e, "MeV")).magnitude for e in (slow, fast)]
    assert reach[0] <= reach[1] * 1.01


@given(st.floats(0.1, 10), st.floats(0.1, 10))
def test_range_times_density_stays(first: float, second: float) -> None:
    a, b = quantity(first, "kg/m**3"), quantity(second, "kg/m**3")
    moved = ranges.range_at_density(q("4 cm"), a, b)
    assert (moved * b).m_as("kg/m**2") == pytest.approx((q("4 cm") * a).m_as("kg/m**2"), rel=1e-12)
