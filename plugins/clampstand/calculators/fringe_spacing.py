"""Fringes of a double slit, and the wavelength that measured ones give."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics import light
from clampstand.units import shown


def fringe_spacing(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Distance between bright fringes: ``given: {wavelength: …, distance: …, separation: …}``."""
    names = ("wavelength", "distance", "separation")
    wavelength, distance, separation = (number_given(practical, given, name) for name in names)
    value = stated(light.fringe_spacing, wavelength.value, distance.value, separation.value)
    return (
        Worked(
            id="fringe-spacing",
            title="Distance between two bright fringes",
            value=value,
            kind="length",
            shown=shown(value, "mm", "length", 3),
            formula=light.fringe_spacing.written,
            inputs=(
                written("wavelength, λ", wavelength, f"practical, {given['wavelength']}"),
                written("distance of the screen, D", distance, f"practical, {given['distance']}"),
                written("separation of the slits, s", separation, f"practical, {given['separation']}"),
            ),
            within="5 %",
        ),
    )


def wavelength_seen(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Wavelength from a measured fringe width: ``given: {fringe: …, separation: …, distance: …}``."""
    names = ("fringe", "separation", "distance")
    fringe, separation, distance = (number_given(practical, given, name) for name in names)
    value = stated(light.wavelength_of_fringes, fringe.value, separation.value, distance.value)
    return (
        Worked(
            id="wavelength-of-fringes",
            title=f"Wavelength that fringes {fringe} wide give",
            value=value,
            kind="length",
            shown=shown(value, "nm", "length", 2),
            formula=light.wavelength_of_fringes.written,
            inputs=(
                written("fringe width, w", fringe, f"practical, {given['fringe']}"),
                written("separation of the slits, s", separation, f"practical, {given['separation']}"),
                written("distance of the screen, D", distance, f"practical, {given['distance']}"),
            ),
            within="5 %",
            page_only=True,
        ),
    )
