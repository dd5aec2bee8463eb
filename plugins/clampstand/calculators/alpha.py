"""Alpha particles of a source: how far they reach in air, and the current their ions can carry."""

from collections.abc import Mapping

from clampstand.calculators.activity_today import activity_today, nuclide_of
from clampstand.calculators.given import source_given
from clampstand.calculators.worked import CannotWork, Input, Worked, computed, written
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.material import Material
from clampstand.model.nuclide import Emission
from clampstand.model.practical import Practical
from clampstand.physics.ionisation import saturation_current
from clampstand.physics.ranges import particle_range
from clampstand.units import bare, digits, joined, number_in, shown_best

RANGE_TABLE = "dry-air.alpha-range"
HALF = bare(0.5)
"""A flat source sends half of its particles up into the air."""


def strongest_alpha(source: Source, book: Book) -> Emission:
    """The most frequent alpha line of a source's nuclide. Raises CannotWork where it has none."""
    line = nuclide_of(source, book).strongest("alpha")
    if line is None:
        raise CannotWork(f"{source.nuclide} gives no alpha particles")
    return line


def _air(book: Book) -> Material:
    air = book.materials.get("dry-air")
    if air is None:
        raise CannotWork("the reference figures have no dry air")
    return air


def _line_input(source: Source, book: Book) -> Input:
    energy = number_in(strongest_alpha(source, book).energy, "MeV")
    emissions = nuclide_of(source, book).emissions.alpha
    citation = emissions.citation if emissions else ""
    return Input(
        "alpha energy, E", joined(digits(energy, 4), "MeV"), f"strongest line of {source.nuclide}", citation
    )


def alpha_range(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Range in air of the source's strongest alpha line, bare: ``given: {source: …}``."""
    source = source_given(practical, book, given)
    table = book.coefficients.get(RANGE_TABLE)
    if table is None:
        raise CannotWork(f"the reference figures have no table {RANGE_TABLE}")
    density = _air(book).figures["density"]
    value = particle_range(strongest_alpha(source, book).energy, table.curve, density.value.value)
    return (
        Worked(
            id=f"alpha-range/{source.id}",
            title=f"Range in air of the alpha particles of {source.id}",
            value=value,
            kind="length",
            shown=shown_best(value, "length", 3),
            formula="R = R(E)/ρ",
            inputs=(
                _line_input(source, book),
                Input("range by mass, R(E)", "table", table.title, table.citation),
                Input("density of air, ρ", str(density.value), density.condition or "", density.citation),
            ),
            within="3 % for a bare source",
            note="A cover takes energy: the particles of most teaching sources reach 10 mm to 20 mm less.",
        ),
    )


def saturation_current_of(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Greatest ion current of the source today, half its particles in air: ``given: {source: …}``."""
    source = source_given(practical, book, given)
    today = activity_today(source, book)
    pair_energy = _air(book).figures["energy-per-ion-pair-by-alphas"]
    value = saturation_current(
        today.value, strongest_alpha(source, book).energy, HALF, pair_energy.value.value
    )
    return (
        Worked(
            id=f"saturation-current/{source.id}",
            title=f"Greatest ionisation current with {source.id} today",
            value=value,
            kind="current",
            shown=shown_best(value, "current", 2),
            formula=saturation_current.written,
            inputs=(
                computed("activity today, A", today),
                _line_input(source, book),
                written(
                    "energy per ion pair, W", pair_energy.value, "reference figures", pair_energy.citation
                ),
                Input("share that enters the air, f", "one half", "a flat source lies on its back"),
                Input("alpha particles for each decay, y", "1", "every one taken at that energy"),
            ),
            day=book.department.computed_for,
            within="an upper bound; a fifth to the whole of it is seen",
            note="Tracks that end in a plate, and a cover over the source, leave fewer ions.",
        ),
    )
