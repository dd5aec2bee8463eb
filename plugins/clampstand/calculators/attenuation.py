"""What stops the radiation of a source: the half-thickness for its gamma rays, the range of its betas."""

from collections.abc import Mapping

from clampstand.calculators.activity_today import nuclide_of
from clampstand.calculators.counting_time import counted_lines
from clampstand.calculators.emissions import BETA_RULE
from clampstand.calculators.given import source_given
from clampstand.calculators.worked import CannotWork, Input, Worked, stated
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.nuclide import Emission
from clampstand.model.practical import Practical
from clampstand.model.substance import Figure
from clampstand.physics.attenuation import thickness_for_mixture
from clampstand.physics.dose import PhotonLine
from clampstand.physics.ranges import beta_greatest_range, thickness_of
from clampstand.units import Quantity, digits, joined, number_in, quantity, shown

_HALF = quantity(0.5, "")
_LINES_SHOWN = 3


def half_thickness(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Thickness that halves a narrow beam of a source's gamma rays: ``given: {source: …, material: …}``."""
    source, (material, density) = source_given(practical, book, given), _density(book, given)
    table = book.coefficients.get(f"{material}.attenuation")
    if table is None:
        raise CannotWork(f"the reference figures have no table {material}.attenuation")
    lines = counted_lines(source, book)
    coefficients = [stated(table.curve.at, line.energy) for line in lines]
    weights = [line.per_decay for line in lines]
    value = stated(thickness_for_mixture, weights, coefficients, density.value.value, _HALF)
    return (
        Worked(
            id=f"half-thickness/{source.id}/{material}",
            title=f"Half-thickness of {material} for the gamma rays of {source.id}",
            value=value,
            kind="length",
            shown=shown(value, "mm", "length", 3),
            formula="Σ yᵢ·exp(−(μ/ρ)ᵢ·ρ·x½) = ½ · Σ yᵢ",
            inputs=(
                Input("energies, E", _energies(lines), f"photons of {source.id} that are counted"),
                Input("attenuation, μ/ρ", "table", table.title, table.citation),
                _density_input(density),
            ),
            within="5 % for a narrow beam",
            note="In an open room scattered rays come round the sheet, and a greater thickness is found.",
        ),
    )


def beta_range(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Greatest depth the beta particles of a source reach: ``given: {source: …, material: …}``."""
    source, (material, density) = source_given(practical, book, given), _density(book, given)
    fastest = _fastest_beta(source, book)
    value = stated(thickness_of, stated(beta_greatest_range, fastest), density.value.value)
    return (
        Worked(
            id=f"beta-range/{source.id}/{material}",
            title=f"Greatest depth of the beta particles of {source.id} in {material}",
            value=value,
            kind="length",
            shown=shown(value, "mm", "length", 2, "up"),
            formula="x = R(E)/ρ, R by Katz and Penfold",
            inputs=(
                Input("end point, E", _in_mev(fastest), f"fastest beta of {source.id}, progeny included"),
                Input("range by mass, R", "rule", "Katz and Penfold, for aluminium", BETA_RULE),
                _density_input(density),
            ),
            within="10 %; light materials only",
        ),
    )


def _density(book: Book, given: Mapping[str, str]) -> tuple[str, Figure]:
    """The material that ``given`` names, and its density. Raises CannotWork for one without figures."""
    name = given.get("material", "")
    material = book.materials.get(name)
    if material is None or "density" not in material.figures:
        raise CannotWork(f"the reference figures have no density of {name or 'no material'}")
    return name, material.figures["density"]


def _density_input(density: Figure) -> Input:
    return Input("density, ρ", str(density.value), density.condition or "", density.citation)


def _fastest_beta(source: Source, book: Book) -> Quantity:
    names = (source.nuclide, *source.in_equilibrium_with)
    nuclides = (
        nuclide_of(source, book),
        *(book.nuclides[name] for name in names[1:] if name in book.nuclides),
    )
    betas: list[Emission] = [beta for nuclide in nuclides for beta in nuclide.emitted("beta")]
    if not betas:
        raise CannotWork(f"{source.id} gives no beta particles")
    return max(beta.energy for beta in betas)


def _energies(lines: tuple[PhotonLine, ...]) -> str:
    """The strongest lines, by energy."""
    strongest = sorted(lines, key=lambda line: -line.per_decay)[:_LINES_SHOWN]
    return ", ".join(_in_mev(line.energy) for line in sorted(strongest, key=lambda line: line.energy))


def _in_mev(energy: Quantity) -> str:
    return joined(digits(number_in(energy, "MeV"), 3), "MeV")
