"""Activity of potassium salt, against radioactivedecay and the mass of potassium-40 by hand."""

import pytest

from clampstand.calculators.potassium_activity import potassium_activity


@pytest.mark.parametrize(("extra", "part"), [({}, 1.0), ({"share": "salt in low-sodium salt"}, 0.66)])
def test_activity_agrees_with_radioactivedecay(book, extra, part):
    """100 g KCl: atomic weights 39.0983 and 35.453, potassium-40 one atom in 8550 (IUPAC: 0.0117 %)."""
    radioactivedecay = pytest.importorskip("radioactivedecay")
    practical = book.practicals["background-and-everyday-objects"]
    (worked,) = potassium_activity(practical, book, {"mass": "mass of salt", **extra})
    grams = 100 * part / (39.0983 + 35.453) * 0.000117 * 39.964
    expected = radioactivedecay.Inventory({"K-40": grams}, "g").activities("Bq")["K-40"]
    assert worked.value.m_as("Bq") == pytest.approx(expected, rel=0.01)
