"""How many times the rate at one distance is that at another, by the inverse-square law."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics import dose
from clampstand.units import digits, number_in


def rate_ratio(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Rate at a near distance by that at a far one: ``given: {near: …, far: …}``."""
    near, far = (number_given(practical, given, word) for word in ("near", "far"))
    value = stated(dose.rate_ratio, near.value, far.value)
    return (
        Worked(
            id=f"rate-ratio/{given['near']}/{given['far']}",
            title=f"Rate {near} away, by the rate {far} away",
            value=value,
            kind="fraction",
            shown=f"{digits(number_in(value, ''), 2)} times",
            formula=dose.rate_ratio.written,
            inputs=(
                written("near distance, d₁", near, f"practical, {given['near']}"),
                written("far distance, d₂", far, f"practical, {given['far']}"),
            ),
            within="20 %",
            note="For a small source in the open. A tube counts some way behind its window, so it sees less.",
            page_only=True,
        ),
    )
