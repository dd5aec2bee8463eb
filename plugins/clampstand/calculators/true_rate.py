"""A count rate mended for the moment in which a counter is blind after each count."""

from collections.abc import Mapping

from clampstand.calculators.given import number_given
from clampstand.calculators.worked import Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.counting import true_rate
from clampstand.units import shown


def rate_mended(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """True rate behind a reading: ``given: {reading: …, dead time: …}``."""
    reading, dead_time = (number_given(practical, given, word) for word in ("reading", "dead time"))
    value = stated(true_rate, reading.value, dead_time.value)
    return (
        Worked(
            id=f"true-rate/{reading}",
            title=f"True rate when the counter reads {reading}",
            value=value,
            kind="count rate",
            shown=shown(value, "counts/s", "count rate", 3),
            formula=true_rate.written,
            inputs=(
                written("reading, m", reading, f"practical, {given['reading']}"),
                written("dead time, τ", dead_time, f"practical, {given['dead time']}"),
            ),
            within="5 %, while the counter is blind for less than a third of the time",
        ),
    )
