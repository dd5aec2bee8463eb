"""Heating a block: the rise without losses, and the specific heat that a smaller rise seems to show."""

from collections.abc import Mapping

from clampstand.calculators.given import figure_of, number_given, substance_given
from clampstand.calculators.worked import CannotWork, Input, Worked, computed, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics import heat
from clampstand.units import Quantity, digits, joined, number_in, shown_best


def temperature_rise(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Energy given and the rise if none is lost: ``given: {item: …, power: …, time: …, mass: …}``."""
    substance = substance_given(book, given)
    capacity = figure_of(substance, "specific-heat")
    energy, mass = _energy(practical, given), number_given(practical, given, "mass")
    rise = stated(heat.temperature_rise, energy.value, mass.value, capacity.value.value)
    return (
        energy,
        Worked(
            id="temperature-rise/rise",
            title="Rise in temperature if nothing is lost",
            value=rise,
            kind="temperature difference",
            shown=joined(digits(number_in(rise, "K"), 3), "K"),
            formula=heat.temperature_rise.written,
            inputs=(
                computed("energy, E", energy),
                written("mass, m", mass, f"practical, {given['mass']}"),
                written("specific heat, c", capacity.value, substance.name, capacity.citation),
            ),
            within="never more",
            note="An unlagged block gives a good deal of it to the air.",
        ),
    )


def specific_heat_seen(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """The specific heat at each end of a range of rises: ``given: {power, time, mass, rise}``."""
    energy, mass = _energy(practical, given), number_given(practical, given, "mass")
    rise = number_given(practical, given, "rise")
    if rise.unit != "K":
        raise CannotWork(f"{given['rise']} is a difference, and {rise} is a temperature; write it in K")
    ends = {"greatest": rise.high, "smallest": rise.low}
    of_mass = written("mass, m", mass, f"practical, {given['mass']}")
    return tuple(
        _seen(which, end, energy, mass.value, of_mass)
        for which, end in ends.items()
        if which == "greatest" or not rise.is_single
    )


def _seen(which: str, rise: Quantity, energy: Worked, mass: Quantity, of_mass: Input) -> Worked:
    value = stated(heat.specific_heat, energy.value, mass, rise)
    return Worked(
        id=f"specific-heat-seen/{which}",
        title=f"Specific heat that the {which} usual rise seems to show",
        value=value,
        kind="specific heat",
        shown=joined(digits(number_in(value, "J/(kg*K)"), 3), "J/(kg K)"),
        formula=heat.specific_heat.written,
        inputs=(
            computed("energy, E", energy),
            of_mass,
            Input("rise, ΔT", joined(digits(number_in(rise, "K"), 3), "K"), "practical, usual rise"),
        ),
        within="5 %",
        note="Too great, for the energy lost to the air is counted as if it had stayed in the block.",
    )


def _energy(practical: Practical, given: Mapping[str, str]) -> Worked:
    power, time = (number_given(practical, given, name) for name in ("power", "time"))
    value = stated(heat.energy_supplied, power.value, time.value)
    return Worked(
        id="temperature-rise/energy",
        title="Energy the heater gives",
        value=value,
        kind="energy",
        shown=shown_best(value, "energy", 3),
        formula=heat.energy_supplied.written,
        inputs=(
            written("power, P", power, f"practical, {given['power']}"),
            written("time, t", time, f"practical, {given['time']}"),
        ),
        within="3 %",
    )
