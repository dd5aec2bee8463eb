"""The reference figures themselves: cited, complete, and in agreement with data packages."""

import pytest
import radioactivedecay as rd

from clampstand.units import quantity
from physics.reference import citations, coefficients, materials, nuclides, substances


def test_every_source_is_a_citation_that_is_written_out() -> None:
    named = {
        c
        for shelf in (nuclides(), materials(), substances())
        for entry in shelf.values()
        for c in entry.citations
    }
    named |= {table.citation for table in coefficients().values()}
    assert named <= citations().keys()


@pytest.mark.parametrize("name", nuclides())
def test_half_life_and_progeny_agree_with_radioactivedecay(name: str) -> None:
    ours, theirs = nuclides()[name], rd.Nuclide(name)
    assert ours.half_life.value.value.m_as("s") == pytest.approx(theirs.half_life("s"), rel=1e-3)
    branches = dict(zip(theirs.progeny(), theirs.branching_fractions(), strict=True))
    branches.pop("SF", None)
    assert ours.progeny == pytest.approx(branches, rel=1e-4)
    assert ours.molar_mass.value.m_as("g/mol") == pytest.approx(theirs.atomic_mass, rel=1e-5)


@pytest.mark.parametrize("name", nuclides())
def test_a_nuclide_emits_what_its_way_of_decay_says(name: str) -> None:
    nuclide, modes = nuclides()[name], rd.Nuclide(name).decay_modes()
    for mode, kind in (("α", "alpha"), ("β-", "beta")):
        share = sum(
            fraction
            for its_mode, fraction in zip(modes, rd.Nuclide(name).branching_fractions(), strict=True)
            if its_mode == mode
        )
        kept = sum(float(emission.per_decay.magnitude) for emission in nuclide.emitted(kind))
        assert kept == pytest.approx(share, abs=0.1), kind


@pytest.mark.parametrize("name", nuclides())
def test_mean_energy_of_a_beta_lies_below_its_end_point(name: str) -> None:
    for kind in ("beta", "positron"):
        for emission in nuclides()[name].emitted(kind):
            assert 0.15 < (emission.mean / emission.energy).m_as("") < 0.6


@pytest.mark.parametrize(
    ("name", "third", "mean"), [("Y-90", 760, 932), ("Sr-90", 182, 195.7), ("H-3", 6.2, 5.7)]
)
def test_mean_beta_energy_is_not_a_third_of_the_end_point(name: str, third: float, mean: float) -> None:
    branch = nuclides()[name].strongest("beta")
    assert branch is not None
    assert branch.energy.m_as("keV") / 3 == pytest.approx(third, rel=0.01)
    assert branch.mean.m_as("keV") == pytest.approx(mean, rel=0.01)


def test_photon_yields_are_per_decay_and_not_relative() -> None:
    """One package gives 3 590 000 for the 59.5 keV line of americium-241, which is 35.9 in a hundred."""
    strongest = nuclides()["Am-241"].strongest("gamma")
    assert strongest is not None
    assert strongest.energy.m_as("keV") == pytest.approx(59.54, rel=1e-3)
    assert strongest.per_decay.magnitude == pytest.approx(0.359, rel=0.01)


@pytest.mark.parametrize("name", nuclides())
def test_gamma_yields_are_at_most_one_a_decay(name: str) -> None:
    assert all(
        emission.per_decay <= quantity(1.001, "1/decay") for emission in nuclides()[name].emitted("gamma")
    )


@pytest.mark.parametrize("name", nuclides())
def test_energies_stay_within_what_the_coefficients_reach(name: str) -> None:
    ends = coefficients()["dry-air.energy-absorption"].rows
    for line in nuclides()[name].photons:
        assert ends[0][0] <= line.energy.m_as("MeV") <= ends[-1][0]


def test_potassium_has_31_to_32_becquerels_a_gram() -> None:
    salt = materials()["potassium-chloride"]
    per_gram = 16.6 * salt.quantity("molar-mass").m_as("g/mol") / 39.098
    assert 31 < per_gram < 32
