"""Bending a beam of electrons: how far a pair of plates moves it, and the circle a field bends it to."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import CannotWork, Input, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.electrons import deflection_on_screen, radius_in_field, specific_charge
from clampstand.units import is_over, number_in, quantity, shown_best

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


def specific_charge_seen(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Charge of the electron by its mass, by a measured circle.

    ``given: {accelerating: …, field: …, radius: …}``.
    """
    names = ("accelerating", "field", "radius")
    accelerating, field, radius = (number_given(practical, given, name) for name in names)
    value = stated(specific_charge, accelerating.value, field.value, radius.value)
    return (
        Worked(
            id="specific-charge",
            title=f"Charge of the electron by its mass, from a circle of {radius}",
            value=value,
            kind="specific charge",
            shown=f"{number_in(value, 'C/kg') / 1e11:.2f} × 10¹¹\u00a0C/kg",
            formula=specific_charge.written,
            inputs=(
                written("accelerating voltage, V", accelerating, f"practical, {given['accelerating']}"),
                written("field of the coils, B", field, f"practical, {given['field']}"),
                written("radius of the circle, r", radius, f"practical, {given['radius']}"),
            ),
            within="10 %",
            note="The CODATA value is 1.759 × 10¹¹ C/kg. Field and radius count twice each.",
            page_only=True,
        ),
    )
