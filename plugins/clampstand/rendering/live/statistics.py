"""Live panels about measured things: how sure a count is, a net rate and its uncertainty, a round area."""

from collections.abc import Iterator, Mapping

from clampstand.calculators.given import number_given
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.counting import (
    count_relative_uncertainty,
    count_uncertainty,
    net_rate,
    net_rate_uncertainty,
)
from clampstand.physics.geometry import disc_area
from clampstand.rendering.live.asking import asked_near
from clampstand.rendering.live.panel import Panel, Result
from clampstand.rendering.live.parts import Asked, Of, Read
from clampstand.units import number_in

_COUNTS = (25.0, 100.0, 400.0, 2500.0, 10_000.0)
_DIAMETERS = (6.0, 10.0, 15.0, 20.0, 25.0, 30.0)


def count_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """How sure another count is."""
    start = number_in(number_given(practical, given, "counts").low, "count")
    counts = Asked("counts", "Counts", "counts", "counts", start, 1, 1e6, 1)
    part = Of(count_relative_uncertainty, counts=Read(counts))
    whole = Of(count_uncertainty, counts=Read(counts))
    yield Panel(
        id="count-uncertainty",
        title="How sure another count is",
        asked=(counts,),
        results=(
            Result("Uncertainty", whole, "counts", 2, "up", ("counts",)),
            Result("As a part of the count", part, "fraction", 2, "up", ("%",)),
        ),
        varied=(counts, _COUNTS),
        note="Two counts in three lie so near the true mean, 19 in 20 within twice as much.",
    )


def net_count_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Net rate of other counts and times."""
    labels = {
        "counts": "Counts with it",
        "time": "Time with it",
        "background": "Counts without it",
        "background time": "Time without it",
    }
    counts, time, background, background_time = (
        asked_near(word.replace(" ", "-"), label, number_given(practical, given, word), 20)
        for word, label in labels.items()
    )
    taken = {
        "gross_counts": Read(counts),
        "gross_time": Read(time),
        "background_counts": Read(background),
        "background_time": Read(background_time),
    }
    rate, spread = Of(net_rate, **taken), Of(net_rate_uncertainty, **taken)
    yield Panel(
        id="net-count",
        title="Net rate of other counts",
        asked=(counts, time, background, background_time),
        results=(
            Result("Net rate", rate, "count rate", 2, "nearest", ("counts/min",)),
            Result("Its uncertainty", spread, "count rate", 2, "up", ("counts/min",)),
        ),
        varied=(counts, tuple(round(counts.start * part) for part in (0.5, 1.0, 2.0, 4.0))),
        note="A net rate less than twice its uncertainty may be chance alone.",
    )


def round_area_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Area of a zone of another diameter."""
    start = number_in(number_given(practical, given, "diameter").high, "mm")
    diameter = Asked("diameter", "Diameter", "length", "mm", start, 1, 100, 0.5)
    yield Panel(
        id="round-area",
        title="Area of a zone of another diameter",
        asked=(diameter,),
        results=(Result("Area", Of(disc_area, diameter=Read(diameter)), "area", 2, "nearest", ("mm²",)),),
        varied=(diameter, _DIAMETERS),
        note="Of one that is not quite round, take the mean of two diameters across each other.",
    )
