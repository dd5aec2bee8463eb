"""Vapour of a flammable liquid: how much air it can make flammable if all of it evaporates."""

from collections.abc import Mapping

from clampstand.calculators.given import figure_of, number_given, substance_given
from clampstand.calculators.room_air import ROOM_TEMPERATURE
from clampstand.calculators.worked import Worked, computed, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.gas import air_made_flammable, vapour_volume
from clampstand.units import shown_best


def flammable_air(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Vapour of a volume of liquid and the air it can spoil: ``given: {item: …, volume: …}``."""
    liquid, volume = substance_given(book, given), number_given(practical, given, "volume")
    density, molar_mass = figure_of(liquid, "liquid-density"), figure_of(liquid, "molar-mass")
    limit = figure_of(liquid, "lower-flammable-limit")
    vapour = stated(vapour_volume, volume.high, density.value.value, molar_mass.value.value, ROOM_TEMPERATURE)
    air = stated(air_made_flammable, vapour, limit.value.value)
    of_liquid = Worked(
        id=f"flammable-air/{given['item']}/vapour",
        title=f"Vapour of {volume} of {liquid.name.lower()}",
        value=vapour,
        kind="volume",
        shown=shown_best(vapour, "volume", 2, "up"),
        formula=vapour_volume.written,
        inputs=(
            written("volume of the liquid, V_l", volume, f"practical, {given['volume']}"),
            written("density, ρ", density.value, density.condition or "", density.citation),
            written("molar mass, M", molar_mass.value, "reference figures", molar_mass.citation),
        ),
        within="3 %",
        note=f"At {ROOM_TEMPERATURE.m_as('degC'):.0f} °C.",
    )
    of_air = Worked(
        id=f"flammable-air/{given['item']}/air",
        title="Air that this vapour can make flammable",
        value=air,
        kind="volume",
        shown=shown_best(air, "volume", 2, "up"),
        formula=air_made_flammable.written,
        inputs=(
            computed("volume of the vapour, Vᵥ", of_liquid),
            written("lower flammable limit, LFL", limit.value, limit.condition or "", limit.citation),
        ),
        within="10 %",
        note="Near the liquid the air is richer; a layer of it lies along the bench.",
    )
    return of_liquid, of_air
