"""The live panel about gas in a room: with everything shut, and with the ventilation counted on."""

from collections.abc import Iterator, Mapping

from clampstand.calculators.clock import phase_length
from clampstand.calculators.room_air import ROOM_TEMPERATURE, Gas, gas_by_room
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.practical import Practical
from clampstand.physics.gas import carbon_dioxide_density
from clampstand.physics.room_air import fraction_after, fraction_in_closed_room, gas_release
from clampstand.rendering.live.asking import asked_room, in_unit, limits_of
from clampstand.rendering.live.panel import Panel, Result
from clampstand.rendering.live.parts import Asked, Choice, Fixed, Of, Picked, Read
from clampstand.units import Quantity, number_in, q

_MASSES = (0.1, 0.5, 1.0, 2.0, 3.0, 5.0, 10.0)
_GREATEST_MASS = 20.0


def room_air_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Carbon dioxide from another mass, in another room, after another time; one panel a phase."""
    phases: set[str] = set()
    for gas in gas_by_room(practical, book):
        if gas.phase not in phases and gas.mass > q("0 kg"):
            phases.add(gas.phase)
            yield _of_gas(gas, practical, book)


def _of_gas(gas: Gas, practical: Practical, book: Book) -> Panel:
    start = min(in_unit(gas.mass, "mass", "kg"), _GREATEST_MASS)
    mass = Asked("mass", "Mass that turns to gas", "mass", "kg", start, 0, _GREATEST_MASS, 0.1)
    needed = practical.needs.room.air_changes
    rate = gas.release.rate if gas.release else None
    room = asked_room(book, gas.room.id, needed.low if needed else None)
    limits = _limits(book)
    results = [
        Result("All of it turned to gas, windows shut", _shut(book, mass, room), "fraction", 3, limits=limits)
    ]
    asked: tuple[Asked | Choice, ...] = (mass, room)
    if needed is not None and rate is not None:
        length = number_in(phase_length(practical, gas.phase), "min")
        time = Asked("time", "Time", "time", "min", min(length, 480.0), 0, 480, 5)
        after = _ventilated(book, Read(mass, rate.high / gas.mass), room, time)
        results.append(Result("After the time, ventilated", after, "fraction", 3, limits=limits))
        asked = (mass, room, time)
    outdoor = book.department.outdoor_carbon_dioxide
    how_fast = (
        f"turned to gas as fast, for each kilogram, as here: {rate} of {gas.mass:.3g~P}" if rate else ""
    )
    return Panel(
        id=f"carbon-dioxide-in-room/{gas.phase}",
        title="Carbon dioxide from another mass, or in another room",
        asked=asked,
        results=tuple(results),
        varied=(mass, _MASSES),
        fixed=tuple(filter(None, (f"outdoors {outdoor}", "gas at 20 °C, well mixed", how_fast))),
        note="Near the floor it is worse. Nobody's breath is counted. Within 10 % shut, 30 % ventilated.",
    )


def _limits(book: Book) -> tuple[Limit, ...]:
    return limits_of(book, "air.carbon-dioxide-8h", "air.carbon-dioxide-15min")


def _density() -> Quantity:
    return carbon_dioxide_density(ROOM_TEMPERATURE)


def _shut(book: Book, mass: Asked, room: Choice) -> Of:
    return Of(
        fraction_in_closed_room,
        outdoor=Fixed(book.department.outdoor_carbon_dioxide.value),
        mass=Read(mass),
        gas_density=Fixed(_density()),
        room_volume=Picked(room, "volume"),
    )


def _ventilated(book: Book, mass_rate: Read, room: Choice, time: Asked) -> Of:
    outdoor = Fixed(book.department.outdoor_carbon_dioxide.value)
    return Of(
        fraction_after,
        start=outdoor,
        outdoor=outdoor,
        release=Of(gas_release, mass_rate=mass_rate, gas_density=Fixed(_density())),
        room_volume=Picked(room, "volume"),
        air_changes=Picked(room, "air changes"),
        time=Read(time),
    )
