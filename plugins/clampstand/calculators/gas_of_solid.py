"""Gas from a piece of dry ice: its volume in the room, and how heavy it is beside air."""

from collections.abc import Mapping

from clampstand.calculators.given import figure_of, number_given, substance_given
from clampstand.calculators.room_air import ROOM_TEMPERATURE
from clampstand.calculators.worked import CannotWork, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.gas import gas_volume, relative_density
from clampstand.units import digits, number_in, shown_best


def gas_of_solid(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Volume at 20 °C of a mass and its density beside air's: ``given: {item: …, mass: …}``."""
    gas, mass = substance_given(book, given), number_given(practical, given, "mass")
    air = book.substances.get("air")
    if air is None:
        raise CannotWork("the reference figures have no air")
    of_gas, of_air = figure_of(gas, "gas-density"), figure_of(air, "gas-density")
    density = written("density of the gas, ρ", of_gas.value, of_gas.condition or "", of_gas.citation)
    volume = stated(gas_volume, mass.value, of_gas.value.value)
    ratio = stated(relative_density, of_gas.value.value, of_air.value.value)
    return (
        Worked(
            id="gas-of-solid/volume",
            title=f"Gas from {mass}",
            value=volume,
            kind="volume",
            shown=shown_best(volume, "volume", 2),
            formula=gas_volume.written,
            inputs=(written("mass, m", mass, f"practical, {given['mass']}"), density),
            within="2 %",
            note=f"At {ROOM_TEMPERATURE.m_as('degC'):.0f} °C; colder gas takes less room.",
        ),
        Worked(
            id="gas-of-solid/density-beside-air",
            title="Density of the gas beside that of air",
            value=ratio,
            kind="fraction",
            shown=f"{digits(number_in(ratio, ''), 3)} times",
            formula=relative_density.written,
            inputs=(
                density,
                written("density of air, ρₐ", of_air.value, of_air.condition or "", of_air.citation),
            ),
            within="1 % at the same temperature",
            note="Cold gas from dry ice is heavier still.",
        ),
    )
