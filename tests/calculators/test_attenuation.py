"""Half-thicknesses and beta ranges against published coefficients and a published range."""

import math

import pytest

from clampstand.calculators.attenuation import beta_range, half_thickness
from clampstand.calculators.worked import CannotWork

LEAD_DENSITY = 11.35


# Lead, in cm²/g: 0.05876 at 1.25 MeV (NIST tables of X-ray mass attenuation) and 0.1101 at 662 keV (XCOM);
# both rows from memory.
@pytest.mark.parametrize(("source", "coefficient"), [("gamma source", 0.1101), ("S-G1", 0.05876)])
def test_half_thickness_of_lead_agrees_with_the_published_coefficient(book, source, coefficient):
    practical = book.practicals["alpha-beta-gamma-absorbers"]
    (worked,) = half_thickness(practical, book, {"source": source, "material": "lead"})
    expected = math.log(2) / (coefficient * LEAD_DENSITY)
    assert worked.value.m_as("cm") == pytest.approx(expected, rel=0.015)


def test_yttrium_betas_reach_eleven_millimetres_of_water(book):
    """Greatest range of yttrium-90 betas in tissue: 11 mm in leaflets of medicines; from memory."""
    practical = book.practicals["alpha-beta-gamma-absorbers"]
    (worked,) = beta_range(practical, book, {"source": "beta source", "material": "water"})
    assert worked.value.m_as("mm") == pytest.approx(11, rel=0.03)


def test_a_material_without_figures_is_refused(book):
    practical = book.practicals["alpha-beta-gamma-absorbers"]
    with pytest.raises(CannotWork, match="no density of granite"):
        half_thickness(practical, book, {"source": "gamma source", "material": "granite"})


def test_cobalt_without_hard_betas_reaches_less_than_yttrium(book):
    """Co-60's common beta ends at 318 keV; its rare one at 1.49 MeV reaches 2.4 mm of aluminium."""
    practical = book.practicals["alpha-beta-gamma-absorbers"]
    (worked,) = beta_range(practical, book, {"source": "S-G1", "material": "aluminium"})
    assert worked.value.m_as("mm") < 2.6
