"""Vapour of a flammable liquid: how much air it can make flammable if all of it evaporates."""

from collections.abc import Mapping

from clampstand.calculators.given import figure_of, number_given, substance_given
from clampstand.calculators.kit_totals import kit_totals
from clampstand.calculators.room_air import ROOM_TEMPERATURE
from clampstand.calculators.worked import CannotWork, Worked, computed, measured, stated, written
from clampstand.model.book import Book
from clampstand.model.department import Room
from clampstand.model.kit import Item
from clampstand.model.practical import Practical
from clampstand.physics.gas import air_made_flammable, vapour_volume
from clampstand.units import Quantity, q, shown, shown_best


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


def volume_at_hand(item_id: str, practical: Practical, book: Book) -> Quantity | None:
    """The whole volume of a liquid on the kit list; None where it is not measured out by volume."""
    amounts = [
        t.in_all for t in kit_totals(practical, book) if t.line.item == item_id and t.in_all is not None
    ]
    volumes = [amount for amount in amounts if amount.is_compatible_with("m**3")]
    return sum(volumes[1:], volumes[0]) if volumes else None


def part_of_flammable_limit(item: Item, volume: Quantity, room: Room, book: Book) -> Worked:
    """The part of its lower flammable limit that a liquid reaches if all of it is vapour in a room.

    Raises:
        CannotWork: the room has no volume, or nothing is known of what the item is made of.
    """
    liquid = book.substances.get(item.substance or "")
    if liquid is None or room.volume is None:
        raise CannotWork(f"the reference figures do not know what {item.name} is made of")
    density, molar_mass = figure_of(liquid, "liquid-density"), figure_of(liquid, "molar-mass")
    limit = figure_of(liquid, "lower-flammable-limit")
    vapour = stated(vapour_volume, volume, density.value.value, molar_mass.value.value, ROOM_TEMPERATURE)
    part = stated(air_made_flammable, vapour, limit.value.value) / room.volume.low * q("100 %")
    return Worked(
        id=f"part-of-flammable-limit/{item.id}/{room.id}",
        title=f"All the {item.name} as vapour in the {room.name}, as a part of its lower flammable limit",
        value=part,
        kind="fraction",
        shown=shown(part, "%", "fraction", 2, "up"),
        formula="Vᵥ / (LFL · V_room)",
        inputs=(
            measured("volume of the liquid, V_l", volume, "volume", "kit list, whole class"),
            measured("volume of its vapour, Vᵥ", vapour, "volume", "worked out"),
            written("lower flammable limit, LFL", limit.value, limit.condition or "", limit.citation),
            written("volume of the room, V_room", room.volume, room.name),
        ),
        within="10 %",
        note="Spread evenly; near the liquid it is far more.",
    )
