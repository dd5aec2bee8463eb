"""The department's reference figures, read plainly for the tests of physics."""

from functools import cache
from pathlib import Path
from typing import Any

import yaml

from clampstand.model.citation import Citation
from clampstand.model.coefficients import CoefficientTable
from clampstand.model.material import Material
from clampstand.model.nuclide import Nuclide
from clampstand.model.substance import Substance
from clampstand.units import Curve

CONTENT = Path(__file__).parents[2] / "content"


def _raw(file: str) -> dict[str, Any]:
    raw: dict[str, Any] = yaml.load((CONTENT / file).read_text("utf-8"), Loader=yaml.CBaseLoader)
    return raw


@cache
def substances() -> dict[str, Substance]:
    raw = _raw("reference/substances.yml")
    return {name: Substance.model_validate(figures) for name, figures in raw.items()}


@cache
def nuclides() -> dict[str, Nuclide]:
    raw = _raw("reference/nuclides.yml")
    made = {name: Nuclide.model_validate(figures) for name, figures in raw.items()}
    return {name: nuclide.placed(name, nuclide.spot) for name, nuclide in made.items()}


@cache
def coefficients() -> dict[str, CoefficientTable]:
    raw = _raw("reference/coefficients.yml")
    return {name: CoefficientTable.model_validate(table) for name, table in raw.items()}


@cache
def curve(name: str) -> Curve:
    return coefficients()[name].curve


@cache
def materials() -> dict[str, Material]:
    raw = _raw("reference/materials.yml")
    return {name: Material.model_validate(figures) for name, figures in raw.items()}


@cache
def citations() -> dict[str, Citation]:
    raw = _raw("citations/matter.yml") | _raw("citations/physics.yml")
    return {name: Citation.model_validate(source) for name, source in raw.items()}
