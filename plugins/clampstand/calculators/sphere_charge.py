"""A charged dome, taken as a sphere far from anything: capacitance, charge, energy, greatest voltage."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, computed, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.electricity import (
    charge_stored,
    energy_stored,
    sphere_capacitance,
    sphere_greatest_voltage,
)
from clampstand.units import Quantity, shown_best

_WITHIN = "20 %"
_NEAR = "The column, the table and people near it make it a little greater."


def sphere_charge(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """What a dome holds at a voltage, and the most it can reach: ``given: {radius: …, voltage: …}``."""
    radius, voltage = (number_given(practical, given, name) for name in ("radius", "voltage"))
    of_radius = written("radius of the dome, r", radius, f"practical, {given['radius']}")
    of_voltage = written("voltage, V", voltage, f"practical, {given['voltage']}")
    capacitance = _capacitance(stated(sphere_capacitance, radius.high), of_radius)
    held = (computed("capacitance, C", capacitance), of_voltage)
    charge = stated(charge_stored, capacitance.value, voltage.high)
    energy = stated(energy_stored, capacitance.value, voltage.high)
    return (
        capacitance,
        Worked(
            id="sphere-charge/charge",
            title="Charge on the dome",
            value=charge,
            kind="charge",
            shown=shown_best(charge, "charge", 2, "up"),
            formula=charge_stored.written,
            inputs=held,
            within=_WITHIN,
        ),
        Worked(
            id="sphere-charge/energy",
            title="Energy in the dome",
            value=energy,
            kind="energy",
            shown=shown_best(energy, "energy", 2, "up"),
            formula=energy_stored.written,
            inputs=held,
            within=_WITHIN,
            note="One spark can let go of nearly all of it.",
        ),
        _greatest_voltage(radius.high, of_radius, book),
    )


def _capacitance(value: Quantity, of_radius: Input) -> Worked:
    return Worked(
        id="sphere-charge/capacitance",
        title="Capacitance of the dome",
        value=value,
        kind="capacitance",
        shown=shown_best(value, "capacitance", 3),
        formula=sphere_capacitance.written,
        inputs=(of_radius,),
        within=_WITHIN,
        note=_NEAR,
    )


def _greatest_voltage(radius: Quantity, of_radius: Input, book: Book) -> Worked:
    """The voltage at which the air round a smooth dome breaks down."""
    air = book.materials.get("dry-air")
    field = air.figures.get("breakdown-field") if air else None
    if field is None:
        raise CannotWork("the reference figures do not say at what field dry air breaks down")
    value = stated(sphere_greatest_voltage, radius, field.value.value)
    return Worked(
        id="sphere-charge/greatest-voltage",
        title="Greatest voltage a smooth dome of this size can reach",
        value=value,
        kind="voltage",
        shown=shown_best(value, "voltage", 2),
        formula=sphere_greatest_voltage.written,
        inputs=(
            of_radius,
            written("field at which air breaks down, E", field.value, field.condition or "", field.citation),
        ),
        within="never more; half of it on an ordinary day",
        note="Dust, damp and every edge let the charge go sooner.",
    )
