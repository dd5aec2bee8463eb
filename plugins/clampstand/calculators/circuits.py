"""High voltage: the current a circuit can drive, and the charge and energy left in it."""

from collections.abc import Mapping

from clampstand.calculators.given import circuit_given
from clampstand.calculators.worked import CannotWork, Input, Worked, measured, stated, written
from clampstand.model.book import Book
from clampstand.model.kit import Output
from clampstand.model.practical import Circuit, Practical
from clampstand.physics.electricity import charge_stored, current_through, energy_stored, peak_of
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
    value = stated(current_through, output.greatest_voltage.high, resistance.low)
    return Worked(
        id=f"series-current/{circuit.supply}",
        title=f"Greatest current through the {circuit.through}",
        value=value,
        kind="current",
        shown=shown_best(value, "current", 2, "up"),
        formula=current_through.written,
        inputs=(
            written("greatest voltage, V", output.greatest_voltage, f"kit, {circuit.supply}"),
            written("series resistance, Rₛ", resistance, f"practical, {circuit.through}"),
            Input("what comes after it, R", "nothing", "a dead short"),
        ),
        within="10 %",
        note="Even into a dead short, and whatever else fails, as long as the resistance is whole.",
    )


def stored_capacitance(circuit: Circuit, practical: Practical, book: Book) -> Quantity:
    """Everything that stores charge with a circuit's supply: its own capacitance and all that it feeds."""
    inside = output_of(circuit, book).capacitance
    parts = [inside.high] if inside else []
    for fed in (each for each in practical.circuits if each.supply == circuit.supply):
        if fed.stores is not None:
            parts.append(_declared(practical, fed.stores).high)
        items = (book.kit[name] for name in fed.feeds if name in book.kit)
        parts += [item.capacitance.high for item in items if item.capacitance is not None]
    return sum(parts, quantity(0, "F"))


def stored_charge_and_energy(circuit: Circuit, practical: Practical, book: Book) -> tuple[Worked, Worked]:
    """Charge and energy left when a circuit is switched off at its supply's greatest voltage.

    Raises:
        CannotWork: the kit does not say what the supply drives, or nothing stores any charge.
    """
    output = output_of(circuit, book)
    voltage = output.greatest_voltage.high
    peak = voltage if output.current == "dc" else peak_of(voltage)
    capacitance = stated(stored_capacitance, circuit, practical, book)
    inputs: tuple[Input, ...] = (
        measured("capacitance, C", capacitance, "capacitance", "supply and what is connected to it"),
        measured("greatest voltage, V", peak, "voltage", f"kit, {circuit.supply}"),
    )
    charge, energy = stated(charge_stored, capacitance, peak), stated(energy_stored, capacitance, peak)
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
