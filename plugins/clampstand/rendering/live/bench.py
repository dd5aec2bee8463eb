"""Live panels about apparatus on the bench: currents, charge and energy, fringes, heating."""

from collections.abc import Iterator, Mapping

from clampstand.calculators.circuits import output_of, stored_capacitance
from clampstand.calculators.given import circuit_given, figure_of, number_given, substance_given
from clampstand.calculators.worked import CannotWork
from clampstand.model.book import Book
from clampstand.model.practical import Circuit, Practical
from clampstand.physics import heat, light
from clampstand.physics.electricity import charge_stored, current_through, energy_stored, peak_of
from clampstand.rendering.live.asking import asked_near, asked_up_to, limits_of
from clampstand.rendering.live.panel import Panel, Result
from clampstand.rendering.live.parts import Asked, Fixed, Of, Read
from clampstand.units import shown_best

_SHARES = (0.1, 0.2, 0.5, 1.0)
_FACTORS = (0.2, 0.5, 1.0, 2.0, 5.0)


def _voltage(circuit: Circuit, book: Book) -> Asked:
    """A voltage the supply can give; it starts at the greatest, as the worked number does."""
    highest = output_of(circuit, book).greatest_voltage
    return asked_up_to("voltage", "Voltage of the supply", highest, highest.high)


def series_current_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Current through another series resistance, at another voltage."""
    circuit = circuit_given(practical, given)
    if circuit.through is None or circuit.through not in practical.numbers:
        raise CannotWork("there is no series resistance")
    declared = practical.numbers[circuit.through].value
    voltage = _voltage(circuit, book)
    resistance = asked_near("resistance", "Series resistance", declared, 1000)
    current = Of(current_through, voltage=Read(voltage), series_resistance=Read(resistance))
    limits = limits_of(book, "electrical.series-current", current=output_of(circuit, book).current)
    yield Panel(
        id=f"series-current/{circuit.supply}",
        title="Current with another resistance, or at another voltage",
        asked=(resistance, voltage),
        results=(Result("Greatest current", current, "current", limits=limits),),
        varied=(resistance, tuple(resistance.start * factor for factor in (0.001, 0.01, 0.1, 0.5, 1.0, 2.0))),
        note="Into a dead short, and while the resistance is whole.",
    )


def stored_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Charge and energy left at another voltage."""
    circuit = circuit_given(practical, given)
    output = output_of(circuit, book)
    voltage = _voltage(circuit, book)
    capacitance = stored_capacitance(circuit, practical, book)
    if output.current == "dc":
        across: Of | Read = Read(voltage)
    else:
        across = Of(peak_of, rms=Read(voltage))
    held = {"capacitance": Fixed(capacitance), "voltage": across}
    charge = limits_of(book, "electrical.stored-charge", current=output.current)
    energy = limits_of(book, "electrical.stored-energy", current=output.current)
    yield Panel(
        id=f"stored/{circuit.supply}",
        title="Charge and energy left at another voltage",
        asked=(voltage,),
        results=(
            Result("Charge", Of(charge_stored, **held), "charge", limits=charge),
            Result("Energy", Of(energy_stored, **held), "energy", limits=energy),
        ),
        varied=(voltage, tuple(voltage.start * share for share in _SHARES)),
        fixed=(f"capacitance {shown_best(capacitance, 'capacitance')}",),
        note="It stays after the switch is off, until the circuit is discharged. Within 20 %.",
    )


def fringe_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Fringes with another laser, slide or screen."""
    labels = {
        "wavelength": "Wavelength",
        "distance": "Distance of the screen",
        "separation": "Slit separation",
    }
    wavelength, distance, separation = (
        asked_near(name, label, number_given(practical, given, name), 2 if name == "wavelength" else 5)
        for name, label in labels.items()
    )
    spacing = Of(
        light.fringe_spacing,
        wavelength=Read(wavelength),
        screen_distance=Read(distance),
        slit_separation=Read(separation),
    )
    yield Panel(
        id="fringe-spacing",
        title="Fringes with another laser, slide or screen",
        asked=(wavelength, distance, separation),
        results=(Result("From one bright fringe to the next", spacing, "length", 3, "nearest", ("mm",)),),
        varied=(distance, _around(distance)),
    )


def heating_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Energy and rise with another heater, time or mass."""
    labels = {"power": "Power of the heater", "time": "Time", "mass": "Mass"}
    power, time, mass = (
        asked_near(name, label, number_given(practical, given, name), 5) for name, label in labels.items()
    )
    substance = substance_given(book, given)
    capacity = figure_of(substance, "specific-heat").value
    energy = Of(heat.energy_supplied, power=Read(power), time=Read(time))
    rise = Of(heat.temperature_rise, energy=energy, mass=Read(mass), specific_heat=Fixed(capacity.value))
    yield Panel(
        id="temperature-rise",
        title="Energy and rise with another heater, time or mass",
        asked=(power, time, mass),
        results=(
            Result("Energy", energy, "energy", 3, "nearest"),
            Result("Rise if nothing is lost", rise, "temperature difference", 3, "nearest", ("K",)),
        ),
        varied=(time, _around(time)),
        fixed=(f"{substance.name}: specific heat {capacity}",),
        note="Never more: an unlagged block gives a good deal of it to the air.",
    )


def _around(asked: Asked) -> tuple[float, ...]:
    """A few values from less to more than the start, within the bounds."""
    return tuple(asked.start * f for f in _FACTORS if asked.low <= asked.start * f <= asked.high)
