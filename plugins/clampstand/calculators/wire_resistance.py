"""Resistance of a round wire from what is written on its reel."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics import electricity
from clampstand.units import shown_best


def wire_resistance(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Resistance of a length of wire: ``given: {resistivity: …, length: …, diameter: …}``."""
    names = ("resistivity", "length", "diameter")
    resistivity, length, diameter = (number_given(practical, given, name) for name in names)
    value = stated(electricity.wire_resistance, resistivity.value, length.value, diameter.value)
    return (
        Worked(
            id="wire-resistance",
            title=f"Resistance of {length} of the wire",
            value=value,
            kind="resistance",
            shown=shown_best(value, "resistance", 2),
            formula=electricity.wire_resistance.written,
            inputs=(
                written("resistivity, ρ", resistivity, f"practical, {given['resistivity']}"),
                written("length, l", length, f"practical, {given['length']}"),
                written("diameter, d", diameter, f"practical, {given['diameter']}"),
            ),
            within="10 %",
            note="A wire drawn one hundredth of a millimetre too thin has 7 % more.",
        ),
    )
