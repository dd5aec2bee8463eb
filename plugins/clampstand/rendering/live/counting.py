"""Live panels about counting: the rate to expect, the time for so many counts, what is left after a time."""

from collections.abc import Iterator, Mapping

from clampstand.calculators.activity_today import activity_today
from clampstand.calculators.counting_time import counted_lines
from clampstand.calculators.given import number_given, source_given
from clampstand.calculators.worked import CannotWork
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.counting import ONE_COUNT, expected_count_rate, time_for_counts, window_share
from clampstand.physics.decay import share_left
from clampstand.rendering.live.asking import activity_of, asked_day, asked_distance, asked_near, register_of
from clampstand.rendering.live.panel import Panel, Result
from clampstand.rendering.live.parts import Asked, AskedDay, Fixed, Of, Read
from clampstand.units import number_in, quantity

_DISTANCES = (50.0, 100.0, 150.0, 200.0, 300.0, 400.0, 500.0)
_LIVES = (0.25, 0.5, 1.0, 2.0, 4.0)


def expected_rate_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Count rate at another distance, on another day, with another tube."""
    source = source_given(practical, book, given)
    activity_today(source, book)  # says why, where there is none
    distance, efficiency, day = _asked(practical, book, given)
    rate = _rate(practical, book, given, distance, efficiency, day)
    time = Of(time_for_counts, counts=Fixed(quantity(100, "count")), rate=rate)
    yield Panel(
        id=f"expected-count-rate/{source.id}",
        title=f"Counts from {source.id} at another distance",
        asked=(distance, efficiency, day),
        results=(
            Result("Net count rate", rate, "count rate", 2, "down", ("counts/s",)),
            Result("Time for 100 counts", time, "time", 3, "up", ("s",)),
        ),
        varied=(distance, _DISTANCES),
        fixed=(register_of(source, book), f"radius of the window {number_given(practical, given, 'radius')}"),
        note="Gamma rays only, as if from a point. Within a factor of two: it is as sure as the efficiency.",
    )


def counting_time_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Time for another number of counts, at another distance, on another day."""
    source = source_given(practical, book, given)
    activity_today(source, book)  # as above
    distance, efficiency, day = _asked(practical, book, given)
    wanted = asked_near("counts", "Counts wanted", number_given(practical, given, "counts"), 100)
    rate = _rate(practical, book, given, distance, efficiency, day)
    time = Of(time_for_counts, counts=Read(wanted), rate=rate)
    yield Panel(
        id=f"counting-time/{source.id}",
        title=f"Time for other counts from {source.id}",
        asked=(wanted, distance, efficiency, day),
        results=(Result("Time", time, "time", 3, "up", ("s",)),),
        varied=(distance, _DISTANCES),
        fixed=(register_of(source, book), f"radius of the window {number_given(practical, given, 'radius')}"),
        note="Gamma rays only. Within a factor of two: a rate once measured with the tube is surer.",
    )


def _asked(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Asked, Asked, AskedDay]:
    source = source_given(practical, book, given)
    efficiency = number_given(practical, given, "efficiency")
    if efficiency.unit != "%":
        raise CannotWork("an efficiency is tried in per cent")
    start = number_in(efficiency.low, "percent")
    return (
        asked_distance(number_given(practical, given, "distance").high),
        Asked("efficiency", "Efficiency of the tube", "fraction", "%", start, 0.01, 100, 0.1),
        asked_day(book, source),
    )


def _rate(
    practical: Practical,
    book: Book,
    given: Mapping[str, str],
    distance: Asked,
    efficiency: Asked,
    day: AskedDay,
) -> Of:
    source = source_given(practical, book, given)
    per_decay = sum((line.per_decay for line in counted_lines(source, book)), quantity(0, "1/decay"))
    radius = number_given(practical, given, "radius").low
    return Of(
        expected_count_rate,
        activity=activity_of(source, book, day),
        per_decay=Fixed(per_decay),
        share=Of(window_share, distance=Read(distance), radius=Fixed(radius)),
        efficiency=Read(efficiency, ONE_COUNT),
    )


def decay_left_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """What is left of a short-lived nuclide after another time."""
    nuclide = book.nuclides.get(given.get("nuclide", ""))
    if nuclide is None:
        raise CannotWork("there are no figures for it")
    half_life = nuclide.half_life.value
    time = asked_near("time", "Time", number_given(practical, given, "time"), 10)
    start = number_in((half_life.value / quantity(1, time.unit)), "")
    left = Of(share_left, half_life=Fixed(half_life.value), elapsed=Read(time))
    times = tuple(round(start * lives, 2) for lives in _LIVES)
    yield Panel(
        id=f"decay-left/{nuclide.id}",
        title=f"What is left of {nuclide.id} after another time",
        asked=(time,),
        results=(Result("Left", left, "fraction", 3, "nearest", ("%",)),),
        varied=(time, times),
        fixed=(f"half-life {half_life}",),
    )
