"""Bending a beam of electrons: how far a pair of plates moves it, and the circle a field bends it to."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.electrons import deflection_on_screen, radius_in_field
from clampstand.units import is_over, quantity, shown_best

_BETWEEN_THE_PLATES = quantity(0, "m")
"""The grid stands between the plates, so no way is left from their end to the screen."""


def beam_deflection(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Height on a grid between the plates: ``given: {accelerating: …, plates: …, along: …, gap: …}``.

    Raises:
        CannotWork: by there the beam would have met a plate, for it enters midway between them.
    """
    names = ("accelerating", "plates", "along", "gap")
    accelerating, plates, along, gap = (number_given(practical, given, name) for name in names)
    height = stated(
        deflection_on_screen, plates.value, accelerating.value, along.value, gap.value, _BETWEEN_THE_PLATES
    )
    if is_over(height, gap.value / 2):
        raise CannotWork("the beam meets a plate before it is so far along")
    return (
        Worked(
            id="beam-deflection/height",
            title=f"Height of the beam {along} along the plates",
            value=height,
            kind="length",
            shown=shown_best(height, "length", 2),
            formula=deflection_on_screen.written,
            inputs=(
                written("voltage between the plates, V", plates, f"practical, {given['plates']}"),
                written("accelerating voltage, Vₐ", accelerating, f"practical, {given['accelerating']}"),
                written("way between the plates, l", along, f"practical, {given['along']}"),
                written("gap of the plates, d", gap, f"practical, {given['gap']}"),
                Input("way on to the screen, L", "none", "the grid stands between the plates"),
            ),
            within="10 %",
            note="The field bulges at the edges of the plates, so the beam bends a little sooner and less.",
        ),
    )


def beam_circle(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Radius of the beam's circle across a field: ``given: {accelerating: …, field: …}``."""
    accelerating, field = (number_given(practical, given, name) for name in ("accelerating", "field"))
    radius = stated(radius_in_field, accelerating.value, field.value)
    return (
        Worked(
            id="beam-deflection/circle",
            title="Radius of the beam's circle in the field of the coils",
            value=radius,
            kind="length",
            shown=shown_best(radius, "length", 3),
            formula=radius_in_field.written,
            inputs=(
                written("accelerating voltage, V", accelerating, f"practical, {given['accelerating']}"),
                written("field of the coils, B", field, f"practical, {given['field']}"),
            ),
            within="10 %",
            note="The field is even near the middle of the coils only.",
        ),
    )
