"""Carbon dioxide in the room from the whole class's dry ice: with everything shut, and as ventilated."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from clampstand.calculators.clock import phase_length
from clampstand.calculators.kit_totals import mass_in_room
from clampstand.calculators.worked import CannotWork, Input, Worked, measured, written
from clampstand.model.book import Book
from clampstand.model.department import Room
from clampstand.model.practical import Phase, Practical, Release
from clampstand.physics.gas import carbon_dioxide_density
from clampstand.physics.room_air import fraction_after, gas_release, rise_in_closed_room
from clampstand.units import Amount, Quantity, digits, joined, number_in, q

ROOM_TEMPERATURE = q("20 °C")


@dataclass(frozen=True, slots=True)
class Gas:
    """Gas a practical lets into one room in one phase.

    Args:
        phase: when.
        room: where; never the open air.
        volume: the room's volume.
        mass: the whole class's mass that can become gas there.
        release: what the practical says of how it is released, if it does.
    """

    phase: Phase
    room: Room
    volume: Amount
    mass: Quantity
    release: Release | None


def gas_by_room(practical: Practical, book: Book) -> Iterator[Gas]:
    """Every room of a practical in which gas can gather, with the mass that can become gas."""
    for phase, mass, release in _masses(practical, book):
        for room_id in practical.where.get(phase, ()):
            room = book.rooms.get(room_id)
            if room is not None and not room.is_open_air and room.volume is not None:
                yield Gas(phase, room, room.volume, mass, release)


def _masses(practical: Practical, book: Book) -> Iterator[tuple[Phase, Quantity, Release | None]]:
    """For each phase in which gas is let off, how much there is of it in all, and how it is released.

    How is known only where a single material gives it off.
    """
    masses: dict[Phase, list[tuple[Quantity, Release | None]]] = {}
    for phase, mass, release in _of_materials(practical, book):
        masses.setdefault(phase, []).append((mass, release))
    for phase, parts in masses.items():
        total = sum((mass for mass, _ in parts[1:]), parts[0][0])
        if total.magnitude < 0:
            continue  # a slip of the sign, which the bounds of a bench tell of
        yield phase, total, parts[0][1] if len(parts) == 1 else None


def _of_materials(practical: Practical, book: Book) -> Iterator[tuple[Phase, Quantity, Release | None]]:
    """For each material that turns to gas, the phase it is used in and how much there is."""
    released = {release.item: release for release in practical.releases}
    for item_id in dict.fromkeys([line.item for line in practical.kit] + list(released)):
        item = book.kit.get(item_id)
        release = released.get(item_id)
        if item is None or not (item.turns_to_gas or release):
            continue
        mass = mass_in_room(item_id, practical, book) if item.turns_to_gas else None
        vented = practical.numbers.get(release.vented or "") if release else None
        parts = [part for part in (mass, vented.value.high if vented else None) if part is not None]
        if parts:
            yield release.phase if release else "run", sum(parts[1:], parts[0]), release


def with_windows_shut(gas: Gas, book: Book) -> Worked:
    """The fraction if all of the mass becomes gas and no air is changed: the worst that can happen."""
    density = carbon_dioxide_density(ROOM_TEMPERATURE)
    rise = rise_in_closed_room(gas.mass, density, gas.volume.low)
    outdoor = book.department.outdoor_carbon_dioxide
    return Worked(
        id=f"carbon-dioxide-in-room/{gas.phase}/{gas.room.id}/shut",
        title=f"CO₂ from all of it, {gas.room.name}, windows shut",
        value=outdoor.value + rise,
        kind="fraction",
        shown=ppm(outdoor.value + rise),
        formula="x = xₒ + m/(ρ·V)",
        inputs=(
            measured("mass that can become gas, m", gas.mass, "mass", "kit list, whole class"),
            written("volume of the room, V", gas.volume, gas.room.name),
            Input(
                "density of CO₂ at 20 °C, ρ",
                f"{digits(density.m_as('kg/m**3'), 4)} kg/m³",
                "virial equation of state",
            ),
            written("CO₂ outdoors, xₒ", outdoor, "department"),
        ),
        within="10 %",
        note=f"a rise of {ppm(rise)}; well mixed, breath of the class not counted",
    )


def as_ventilated(gas: Gas, practical: Practical, book: Book) -> Worked | None:
    """The fraction at the end of the phase with the ventilation the practical counts on.

    None where the practical names no ventilation or no rate of release.
    """
    needed = practical.needs.room.air_changes
    if needed is None or gas.release is None or gas.release.rate is None:
        return None
    density = carbon_dioxide_density(ROOM_TEMPERATURE)
    outdoor = book.department.outdoor_carbon_dioxide
    release = gas_release(gas.release.rate.high, density)
    length = phase_length(practical, gas.phase)
    value = fraction_after(outdoor.value, outdoor.value, release, gas.volume.low, needed.low, length)
    return Worked(
        id=f"carbon-dioxide-in-room/{gas.phase}/{gas.room.id}/ventilated",
        title=f"CO₂ at the end, {gas.room.name}, ventilated",
        value=value,
        kind="fraction",
        shown=ppm(value),
        formula="x = xₒ + G·(1 − e^(−λt))/(λ·V),  G = ṁ/ρ",
        inputs=(
            written("rate of turning to gas, ṁ", gas.release.rate, "practical"),
            written("air changes counted on, λ", needed, "practical"),
            written("volume of the room, V", gas.volume, gas.room.name),
            measured("time, t", length, "time", "running clock"),
            written("CO₂ outdoors, xₒ", outdoor, "department"),
        ),
        within="30 %",
        note=f"a rise of {ppm(value - outdoor.value)}; holds only while the room is ventilated as written",
    )


def ppm(fraction: Quantity) -> str:
    """A fraction by volume in parts per million, rounded up."""
    return joined(digits(number_in(fraction, "ppm"), 3, "up"), "ppm")


def carbon_dioxide_in_room(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Carbon dioxide in every room the practical may be done in, shut and aired: ``given`` needs nothing."""
    worked: list[Worked] = []
    for gas in gas_by_room(practical, book):
        ventilated = as_ventilated(gas, practical, book)
        worked += [with_windows_shut(gas, book), *([ventilated] if ventilated else [])]
    if not worked:
        raise CannotWork("nothing turns to gas in a room here: it is done in the open air")
    return tuple(worked)
