"""The shortest time in which the ions of a source can let an electroscope fall."""

from collections.abc import Mapping

from clampstand.calculators.alpha import saturation_current_of
from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Worked, computed, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.electricity import charge_stored
from clampstand.physics.ionisation import electroscope_fall_time
from clampstand.units import shown, shown_best


def electroscope_fall(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Charge on an electroscope and its shortest fall: ``given: {source: …, capacitance: …, voltage: …}``."""
    capacitance, voltage = (number_given(practical, given, word) for word in ("capacitance", "voltage"))
    (current,) = saturation_current_of(practical, book, given)
    held = (
        written("capacitance, C", capacitance, f"practical, {given['capacitance']}"),
        written("voltage, V", voltage, f"practical, {given['voltage']}"),
    )
    charge = stated(charge_stored, capacitance.value, voltage.value)
    time = stated(electroscope_fall_time, capacitance.value, voltage.value, current.value)
    return (
        Worked(
            id="electroscope-fall/charge",
            title="Charge on the electroscope",
            value=charge,
            kind="charge",
            shown=shown_best(charge, "charge", 2),
            formula=charge_stored.written,
            inputs=held,
            within="a factor of two",
        ),
        Worked(
            id=f"electroscope-fall/{current.id.removeprefix('saturation-current/')}",
            title="Shortest time in which it can fall",
            value=time,
            kind="time",
            shown=shown(time, "s", "time", 2),
            formula=electroscope_fall_time.written,
            inputs=(*held, computed("greatest ion current, I", current)),
            day=book.department.computed_for,
            within="a lower bound; up to three times as long is seen",
            note="Some particles end in the cap or the cover, and little charge gathers ions slowly.",
        ),
    )
