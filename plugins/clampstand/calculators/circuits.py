"""High voltage: the current a circuit can drive, and the charge and energy left in it."""

from collections.abc import Mapping

from clampstand.calculators.given import circuit_given
from clampstand.calculators.worked import CannotWork, Input, Worked, measured, written
from clampstand.model.book import Book
from clampstand.model.kit import Output
from clampstand.model.practical import Circuit, Practical
from clampstand.physics.electricity import charge_stored, current_through, energy_stored
from clampstand.units import Amount, Quantity, quantity, shown_best


def output_of(circuit: Circuit, book: Book) -> Output:
    """What the circuit's supply can drive. Raises CannotWork where the kit does not say."""
    item = book.kit.get(circuit.supply)
    if item is None or item.output is None:
        raise CannotWork(f"the kit does not say what {circuit.supply} can drive")
    return item.output


def _declared(practical: Practical, name: str) -> Amount:
    if name not in practical.numbers:
        raise CannotWork(f"{name} is not a declared number of this practical")
    return practical.numbers[name].value


def series_current(circuit: Circuit, practical: Practical, book: Book) -> Worked:
    """The greatest current through the declared series resistance, at the supply's greatest voltage.

    Raises:
        CannotWork: the circuit has no series resistance, or the kit does not say what the supply drives.
    """
    if circuit.through is None:
        raise CannotWork(f"{circuit.supply} is connected directly, without a series resistance")
    output, resistance = output_of(circuit, book), _declared(practical, circuit.through)
    value = current_through(output.greatest_voltage.high, resistance.low)
    return Worked(
        id=f"series-current/{circuit.supply}",
        title=f"Greatest current through the {circuit.through}",
        value=value,
        kind="current",
        shown=shown_best(value, "current", 2, "up"),
        formula=current_through.written,
        inputs=(
            written("greatest voltage, V", output.greatest_voltage, f"kit, {circuit.supply}"),
            written("series resistance, R", resistance, f"practical, {circuit.through}"),
        ),
        within="10 %",
        note="Even into a dead short, and whatever else fails, as long as the resistance is whole.",
    )


def stored_capacitance(circuit: Circuit, practical: Practical, book: Book) -> Quantity:
    """Everything that stores charge in a circuit: the supply's own capacitance and what is connected."""
    inside = output_of(circuit, book).capacitance
    parts = [inside.high] if inside else []
    if circuit.stores is not None:
        parts.append(_declared(practical, circuit.stores).high)
    return sum(parts, quantity(0, "F"))


def stored_charge_and_energy(circuit: Circuit, practical: Practical, book: Book) -> tuple[Worked, Worked]:
    """Charge and energy left when a circuit is switched off at its supply's greatest voltage.

    Raises:
        CannotWork: the kit does not say what the supply drives.
    """
    voltage, capacitance = (
        output_of(circuit, book).greatest_voltage,
        stored_capacitance(circuit, practical, book),
    )
    inputs: tuple[Input, ...] = (
        measured("capacitance, C", capacitance, "capacitance", "supply and what is connected to it"),
        written("greatest voltage, V", voltage, f"kit, {circuit.supply}"),
    )
    charge, energy = charge_stored(capacitance, voltage.high), energy_stored(capacitance, voltage.high)
    note = "It stays after the switch is off, until the circuit is discharged."
    return (
        Worked(
            id=f"stored-charge/{circuit.supply}",
            title="Charge stored",
            value=charge,
            kind="charge",
            shown=shown_best(charge, "charge", 2, "up"),
            formula=charge_stored.written,
            inputs=inputs,
            within="20 %",
            note=note,
        ),
        Worked(
            id=f"stored-energy/{circuit.supply}",
            title="Energy stored",
            value=energy,
            kind="energy",
            shown=shown_best(energy, "energy", 2, "up"),
            formula=energy_stored.written,
            inputs=inputs,
            within="20 %",
            note=note,
        ),
    )


def series_current_given(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """The series current of a circuit: ``given: {circuit: …}``, the id of its supply."""
    return (series_current(circuit_given(practical, given), practical, book),)


def stored_given(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Charge and energy stored in a circuit: ``given: {circuit: …}``, the id of its supply."""
    return stored_charge_and_energy(circuit_given(practical, given), practical, book)
