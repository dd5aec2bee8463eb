"""Speed of the electrons of a tube: as it is, and as a class works it out."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics import electrons
from clampstand.units import Quantity, number_in, shown


def electron_speed(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Speed at the end of the gun, by relativity and by Newton: ``given: {voltage: …}``."""
    voltage = number_given(practical, given, "voltage")
    inputs = (written("accelerating voltage, V", voltage, f"practical, {given['voltage']}"),)
    true = stated(electrons.electron_speed, voltage.value)
    classical = stated(electrons.electron_speed_classical, voltage.value)
    excess = 100 * number_in((classical / true - 1), "")
    return (
        Worked(
            id="electron-speed/by-newton",
            title="Speed of the electrons, as a class works it out",
            value=classical,
            kind="speed",
            shown=_kilometres(classical),
            formula=electrons.electron_speed_classical.written,
            inputs=inputs,
            within="as well as the voltage is known",
            note=f"Too high by {excess:.2g} %, for it leaves relativity out.",
        ),
        Worked(
            id="electron-speed/by-relativity",
            title="Speed of the electrons",
            value=true,
            kind="speed",
            shown=_kilometres(true),
            formula=electrons.electron_speed.written,
            inputs=inputs,
            within="as well as the voltage is known",
        ),
    )


def _kilometres(speed: Quantity) -> str:
    return shown(speed, "km/s", "speed", 3)
