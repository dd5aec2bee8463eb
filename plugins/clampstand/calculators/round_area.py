"""Area of a round patch from its diameter: a clear zone on a plate."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.geometry import disc_area
from clampstand.units import shown


def round_area(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Area of a round patch; of a range of diameters, of the widest: ``given: {diameter: …}``."""
    diameter = number_given(practical, given, "diameter")
    value = stated(disc_area, diameter.high)
    widest = "" if diameter.is_single else ", the widest"
    return (
        Worked(
            id=f"round-area/{given['diameter']}",
            title=f"Area of a round patch {shown(diameter.high, 'mm', 'length', 3)} across{widest}",
            value=value,
            kind="area",
            shown=shown(value, "mm²", "area", 2),
            formula=disc_area.written,
            inputs=(written("diameter, d", diameter, f"practical, {given['diameter']}"),),
            within="twice the part by which the diameter may be off",
            page_only=True,
        ),
    )
