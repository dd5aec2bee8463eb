"""Gas from a reaction: hydrogen of a piece of alkali metal, and sulfur dioxide of a class in its rooms."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from clampstand.calculators.given import figure_of, number_given, substance_given
from clampstand.calculators.kit_totals import kit_totals
from clampstand.calculators.room_air import ROOM_TEMPERATURE
from clampstand.calculators.worked import CannotWork, Input, Worked, measured, stated, written
from clampstand.model.book import Book
from clampstand.model.department import Room
from clampstand.model.practical import Practical
from clampstand.model.substance import Substance
from clampstand.physics.chemistry import amount_of, limiting_reagent, volume_of_gas
from clampstand.physics.gas import gas_density
from clampstand.physics.room_air import rise_in_closed_room
from clampstand.units import Amount, Quantity, UnlikeUnits, digits, joined, number_in, shown_best

ALKALI_METALS = ("Li", "Na", "K")
SULFUR_DIOXIDE = "sulfur-dioxide"


def hydrogen_of_piece(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Mass of a cube of alkali metal and the hydrogen it gives: ``given: {item: …, edge: …}``."""
    metal, edge = substance_given(book, given), number_given(practical, given, "edge")
    if metal.formula not in ALKALI_METALS:
        raise CannotWork(f"{metal.name} is no alkali metal, two atoms of which give one molecule of hydrogen")
    if edge.kind != "length":
        raise CannotWork(f"the edge is written as a {edge.kind}")
    density, molar_mass = figure_of(metal, "solid-density"), figure_of(metal, "molar-mass")
    mass = density.value.value * edge.high**3
    hydrogen = stated(amount_of, mass, molar_mass.value.value) / 2
    volume = stated(volume_of_gas, hydrogen, ROOM_TEMPERATURE)
    return (
        Worked(
            id=f"hydrogen-of-piece/{given['item']}",
            title=f"Hydrogen from a cube of {metal.name.lower()} of {edge}",
            value=volume,
            kind="volume",
            shown=shown_best(volume, "volume", 2, "up"),
            formula="V = ½·(ρ·a³/M)·R·T/p",
            inputs=(
                written("edge of the cube, a", edge, f"practical, {given['edge']}"),
                written("density, ρ", density.value, density.condition or "", density.citation),
                written("molar mass, M", molar_mass.value, "reference figures", molar_mass.citation),
                measured("mass of the cube, ρ·a³", mass, "mass", "worked out"),
            ),
            within="three times the part by which the edge is off",
            note=f"Two atoms give one molecule. At {ROOM_TEMPERATURE.m_as('degC'):.0f} °C.",
        ),
    )


def sulfur_dioxide_in_room(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Sulfur dioxide in each room if all of the class's escapes: ``given: {acid: …, thiosulfate: …}``.

    Na₂S₂O₃ + 2 HCl → 2 NaCl + H₂O + S + SO₂; whichever reagent of the kit list runs out first decides. With
    ``escapes: …`` as well, the declared share of it that escapes, it is what that share comes to.
    """
    reagents = {word: (_amount(practical, book, given, word), n) for word, n in _EQUATION.items()}
    least = limiting_reagent(reagents)
    amount = reagents[least][0] / reagents[least][1]
    gas = book.substances.get(SULFUR_DIOXIDE)
    if gas is None:
        raise CannotWork(f"the reference figures have no {SULFUR_DIOXIDE}")
    rooms = tuple(_rooms(practical, book))
    if not rooms:
        raise CannotWork("no room of the lesson has a volume in which gas could gather")
    share = _share(practical, given)
    origin = f"{least} of the kit list"
    return tuple(_in_room(room, volume, _Escaping(gas, amount, share, origin)) for room, volume in rooms)


@dataclass(frozen=True, slots=True)
class _Escaping:
    """What may form, where that comes from, and the share of it that escapes; None for all of it."""

    gas: Substance
    amount: Quantity
    share: Amount | None
    origin: str

    @property
    def escaped(self) -> Quantity:
        return self.amount if self.share is None else self.amount * self.share.high


def _share(practical: Practical, given: Mapping[str, str]) -> Amount | None:
    if "escapes" not in given:
        return None
    share = number_given(practical, given, "escapes")
    if share.kind != "fraction" or number_in(share.high, "") > 1:
        raise CannotWork(f"the share that escapes is written as {share}, which is no part of a whole")
    return share


_EQUATION = {"acid": 2, "thiosulfate": 1}
"""How many of each reagent go to one molecule of the gas."""


def _amount(practical: Practical, book: Book, given: Mapping[str, str], word: str) -> Quantity:
    """How much of a dissolved reagent the class has in the room."""
    item_id = given.get(word, "")
    item = book.kit.get(item_id)
    totals = (t.amount for t in kit_totals(practical, book) if t.line.item == item_id)
    volumes = [volume for volume in totals if volume is not None]
    if item is None or item.concentration is None or not volumes:
        raise CannotWork(f"it needs to be given {word}: a solution that the kit list measures out")
    try:
        amount: Quantity = item.concentration.high * sum(volumes[1:], volumes[0])
        amount.m_as("mol")
    except UnlikeUnits:
        raise CannotWork(f"the kit list does not measure {item.name} by volume") from None
    return amount


def _rooms(practical: Practical, book: Book) -> Iterator[tuple[Room, Quantity]]:
    for room_id in practical.where.get("run", ()):
        room = book.rooms.get(room_id)
        if room is not None and not room.is_open_air and room.volume is not None:
            yield room, room.volume.low


def _in_room(room: Room, volume: Quantity, of: _Escaping) -> Worked:
    molar_mass = figure_of(of.gas, "molar-mass")
    density = stated(gas_density, molar_mass.value.value, ROOM_TEMPERATURE)
    fraction = stated(rise_in_closed_room, of.escaped * molar_mass.value.value, density, volume)
    part = "all" if of.share is None else str(of.share)
    return Worked(
        id=f"sulfur-dioxide-in-room/{room.id}" + ("" if of.share is None else "/share"),
        title=f"Sulfur dioxide in the {room.name} if {part} of it escaped, windows shut",
        value=fraction,
        kind="fraction",
        shown=joined(digits(number_in(fraction, "ppm"), 2, "up"), "ppm"),
        formula=rise_in_closed_room.written,
        inputs=(
            measured("most that can form", of.amount, "amount", of.origin),
            *(() if of.share is None else (written("share that escapes", of.share, "an assumption"),)),
            measured("what escapes, n", of.escaped, "amount", "worked out"),
            written("molar mass, M", molar_mass.value, of.gas.name, molar_mass.citation),
            measured("mass of the gas, m = n·M", of.escaped * molar_mass.value.value, "mass", "worked out"),
            Input("density at 20 °C, ρ", _in_kg_a_cubic_metre(density), "as an ideal gas"),
            Input("volume of the room, V", shown_best(volume, "volume"), room.name),
        ),
        within="an upper bound" if of.share is None else "a factor of ten; the share decides",
        note="Most of it stays dissolved; the bath keeps it there.",
    )


def _in_kg_a_cubic_metre(density: Quantity) -> str:
    return joined(digits(number_in(density, "kg/m**3"), 3), "kg/m³")
