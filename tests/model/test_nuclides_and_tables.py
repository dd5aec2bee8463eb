"""Nuclides, coefficient tables and materials refuse figures that cannot be."""

from typing import Any

import pytest
from pydantic import ValidationError

from clampstand.model.coefficients import CoefficientTable
from clampstand.model.material import Material
from clampstand.model.nuclide import Nuclide, chain_from

NUCLIDE: dict[str, Any] = {
    "name": "caesium-137",
    "element": "Cs",
    "molar_mass": "136.907 g/mol",
    "half_life": {"value": "30.17 years", "citation": "somebody"},
    "progeny": {"Ba-137m": "0.944", "Ba-137": "0.056"},
    "emissions": {"beta": {"citation": "somebody", "rows": [["514.03", "174.32", "0.947"]]}},
}
TABLE: dict[str, Any] = {
    "title": "Attenuation",
    "of": "lead",
    "x": {"quantity": "photon energy", "unit": "MeV"},
    "y": {"quantity": "mass attenuation coefficient", "unit": "cm²/g"},
    "rows": [["0.6", "0.1248"], ["0.8", "0.0887"]],
    "uncertainty": "2 %",
    "citation": "somebody",
}
MATERIAL: dict[str, Any] = {
    "name": "Lead",
    "figures": {"density": {"value": "11.35 g/mL", "citation": "somebody"}},
}


def test_a_nuclide_gives_quantities() -> None:
    caesium = Nuclide.model_validate(NUCLIDE)
    branch = caesium.strongest("beta")
    assert branch is not None
    assert branch.energy.m_as("MeV") == pytest.approx(0.51403)
    assert caesium.emitted("alpha") == ()
    assert caesium.strongest("alpha") is None
    assert caesium.citations == ("somebody",)


def test_a_chain_names_each_member_once_and_leaves_out_what_has_no_figures() -> None:
    shelf = {n: Nuclide.model_validate(NUCLIDE) for n in ("Cs-137", "Ba-137m")}
    placed = {n: nuclide.placed(n, nuclide.spot) for n, nuclide in shelf.items()}
    assert [member.name for member in chain_from(placed, "Cs-137")] == ["Cs-137", "Ba-137m"]
    with pytest.raises(KeyError):
        chain_from(placed, "Xx-1")


@pytest.mark.parametrize(
    "wrong",
    [
        {"progeny": {"Ba-137m": "0.944", "Ba-137": "0.56"}},
        {"progeny": {"Ba-137m": "-0.1"}},
        {"half_life": {"value": "30.17 kg", "citation": "somebody"}},
        {"half_life": {"value": "30.17 years"}},
        {"emissions": {"beta": {"citation": "somebody", "rows": [["514", "174"]]}}},
        {"emissions": {"gamma": {"citation": "somebody", "rows": [["662", "0"]]}}},
        {"emissions": {"neutrino": {"citation": "somebody", "rows": []}}},
    ],
)
def test_a_nuclide_that_cannot_be_is_refused(wrong: dict[str, Any]) -> None:
    with pytest.raises(ValidationError):
        Nuclide.model_validate({**NUCLIDE, **wrong})


def test_a_table_gives_a_curve() -> None:
    curve = CoefficientTable.model_validate(TABLE).curve
    assert (curve.x_unit, curve.y_unit, curve.rows[0]) == ("MeV", "cm**2/g", (0.6, 0.1248))


@pytest.mark.parametrize(
    "wrong",
    [
        {"rows": [["0.8", "0.1"], ["0.6", "0.2"]]},
        {"rows": [["0.8", "0.1"]]},
        {"rows": [["0.6", "0"], ["0.8", "0.1"]]},
        {"x": {"quantity": "photon energy", "unit": "9**9**9"}},
        {"uncertainty": "large"},
    ],
)
def test_a_table_that_cannot_be_is_refused(wrong: dict[str, Any]) -> None:
    with pytest.raises(ValidationError):
        CoefficientTable.model_validate({**TABLE, **wrong})


@pytest.mark.parametrize(
    "figures",
    [
        {"density": {"value": "11.35 g", "citation": "somebody"}},
        {"colour": {"value": "11.35 g/mL", "citation": "somebody"}},
        {"density": {"value": "11.35 g/mL"}},
    ],
)
def test_a_material_that_cannot_be_is_refused(figures: dict[str, Any]) -> None:
    assert Material.model_validate(MATERIAL).quantity("density").m_as("kg/m**3") == pytest.approx(11350)
    with pytest.raises(ValidationError):
        Material.model_validate({**MATERIAL, "figures": figures})
