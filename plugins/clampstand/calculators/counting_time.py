"""Counts to expect from a gamma source today, and the time a wanted number of them takes."""

from collections.abc import Mapping

from clampstand.calculators.activity_today import activity_today, nuclide_of
from clampstand.calculators.emissions import photon_lines
from clampstand.calculators.given import number_given, source_given
from clampstand.calculators.remembered import once_a_book
from clampstand.calculators.worked import CannotWork, Input, Worked, computed, stated, written
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.practical import Practical
from clampstand.physics.counting import ONE_COUNT, expected_count_rate, time_for_counts, window_share
from clampstand.physics.dose import PhotonLine
from clampstand.units import Quantity, digits, number_in, q, quantity, shown

COUNTED_FROM = q("100 keV")
"""Softer photons are mostly stopped on the way into a tube, and its efficiency is stated for harder ones."""


@once_a_book
def counted_lines(source: Source, book: Book) -> tuple[PhotonLine, ...]:
    """The photons of a source that a counter is taken to see. Raises CannotWork where it gives none."""
    lines = tuple(line for line in photon_lines(source, book) if line.energy >= COUNTED_FROM)
    if not lines:
        raise CannotWork(f"{source.id} gives no gamma rays above {COUNTED_FROM.m_as('keV'):g} keV")
    return lines


def expected_rate(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Net gamma count rate today: ``given: {source: …, distance: …, radius: …, efficiency: …}``.

    ``radius`` is that of the tube's window, ``efficiency`` the share of the photons that enter it and count.
    """
    return (_rate(practical, book, given),)


def counting_time(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Time for a number of net counts today: ``given`` as :func:`expected_rate`, and ``counts``."""
    rate = _rate(practical, book, given)
    counts, distance = (number_given(practical, given, word) for word in ("counts", "distance"))
    value = stated(time_for_counts, counts.high, rate.value)
    return (
        Worked(
            id=rate.id.replace("expected-count-rate", "counting-time"),
            title=f"Time for {counts} from {source_given(practical, book, given).id}, {distance} away, today",
            value=value,
            kind="time",
            shown=shown(value, "s", "time", 3, "up"),
            formula=time_for_counts.written,
            inputs=(
                written("counts wanted, N", counts, f"practical, {given['counts']}"),
                computed("count rate, R", rate),
            ),
            day=book.department.computed_for,
            within="a factor of two",
            note="It is as sure as the efficiency; a rate once measured with this tube is surer.",
        ),
    )


def _rate(practical: Practical, book: Book, given: Mapping[str, str]) -> Worked:
    source = source_given(practical, book, given)
    distance, radius, efficiency = (
        number_given(practical, given, word) for word in ("distance", "radius", "efficiency")
    )
    today, per_decay = activity_today(source, book), _photons_per_decay(source, book)
    share = stated(window_share, distance.high, radius.low)
    value = stated(expected_count_rate, today.value, per_decay, share, efficiency.low * ONE_COUNT)
    emissions = nuclide_of(source, book).emissions.gamma
    return Worked(
        id=f"expected-count-rate/{source.id}/{distance}",
        title=f"Net count rate of {source.id} {distance} away today",
        value=value,
        kind="count rate",
        shown=shown(value, "counts/s", "count rate", 2, "down"),
        formula=f"{expected_count_rate.written}, {window_share.written}, R_B = 0",
        inputs=(
            computed("activity today, A", today),
            Input(
                "gamma rays per decay, y",
                digits(number_in(per_decay, "1/decay"), 3),
                f"photons from {COUNTED_FROM.m_as('keV'):g} keV on, progeny included",
                emissions.citation if emissions else "",
            ),
            Input("distance, d", str(distance), f"practical, {given['distance']}"),
            written("radius of the window, r", radius, f"practical, {given['radius']}"),
            written("efficiency, ε", efficiency, f"practical, {given['efficiency']}"),
        ),
        day=book.department.computed_for,
        within="a factor of two",
        note="Gamma rays only, as if from a point; beta particles come on top where nothing stops them.",
    )


@once_a_book
def _photons_per_decay(source: Source, book: Book) -> Quantity:
    return sum((line.per_decay for line in counted_lines(source, book)), quantity(0, "1/decay"))
