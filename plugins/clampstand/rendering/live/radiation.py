"""Live panels about sources: activity, dose rate, dose of a stay, ion current."""

import math
from collections.abc import Iterator, Mapping

from clampstand.calculators.activity_today import activity_today, nuclide_of
from clampstand.calculators.alpha import HALF, strongest_alpha
from clampstand.calculators.dose import background_of, emitter
from clampstand.calculators.exposures import exposures
from clampstand.calculators.given import number_given, source_given
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.decay import share_left
from clampstand.physics.dose import ambient_dose_rate, background_time, dose
from clampstand.physics.ionisation import saturation_current
from clampstand.rendering.live.asking import (
    activity_of,
    asked_day,
    asked_distance,
    later_days,
    limits_of,
    register_of,
)
from clampstand.rendering.live.panel import Panel, Result
from clampstand.rendering.live.parts import Asked, Fixed, Of, Read, Since
from clampstand.units import Quantity, number_in

_DISTANCES = (50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0)
_TIMES = ("s", "min", "h", "days")
_MINUTES = (1.0, 2.0, 5.0, 10.0, 20.0, 60.0)


def activity_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Activity on another day, and the share that is left."""
    source = source_given(practical, book, given)
    activity_today(source, book)  # says why, where there is none
    day = asked_day(book, source)
    half_life = Fixed(nuclide_of(source, book).half_life.value.value)
    left = Of(share_left, half_life=half_life, elapsed=Since(day, source.reference_date))
    yield Panel(
        id=f"activity-today/{source.id}",
        title=f"Activity of {source.id} on another day",
        asked=(day,),
        results=(
            Result("Activity", activity_of(source, book, day), "activity", 4, "nearest"),
            Result("Left of it since the reference date", left, "fraction", 3, "nearest", ("%",)),
        ),
        varied=(day, later_days(day)),
        fixed=(register_of(source, book),),
    )


def dose_rate_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Dose rate at another distance, on another day."""
    source = source_given(practical, book, given)
    start = number_given(practical, given, "distance")
    obeyed = practical.numbers[given["distance"]].obeys
    limits = limits_of(book, obeyed) if obeyed else ()
    known, day = emitter(source, book), asked_day(book, source)
    distance = asked_distance(start.low, limits[0] if limits else None)
    rate = _rate(known.constant, activity_of(source, book, day), distance)
    yield Panel(
        id=f"dose-rate-at/{source.id}",
        title=f"Dose rate from {source.id} at another distance",
        asked=(distance, day),
        results=(Result("Dose rate", rate, "dose rate"),),
        varied=(distance, _DISTANCES),
        fixed=(register_of(source, book), _constant_in_words(known.inputs[1].value)),
        note="Gamma and X-rays only, from the bare source. Within 20 %.",
    )


def _constant_in_words(constant: str) -> str:
    return f"dose-rate constant {constant}"


def _rate(constant: Quantity, activity: Of, distance: Asked) -> Of:
    return Of(ambient_dose_rate, constant=Fixed(constant), activity=activity, distance=Read(distance))


def stay_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Dose of a stay at a distance, beside natural background."""
    source = source_given(practical, book, given)
    known, day = emitter(source, book), asked_day(book, source)
    background, _ = background_of(book)
    stays = list(exposures(practical, given.get("source", "source"), "teacher", book))
    minutes = sum(number_in(stay.time, "min") for stay in stays) or 10.0
    near = min((stay.distance for stay in stays), default=book.department.teacher_to_source.low)
    distance = asked_distance(near)
    time = Asked("time", "Time", "time", "min", min(math.ceil(minutes * 10) / 10, 480.0), 0, 480, 1)
    rate = _rate(known.constant, activity_of(source, book, day), distance)
    got = Of(dose, rate=rate, time=Read(time))
    likened = Of(background_time, amount=got, background=Fixed(background.value))
    yield Panel(
        id=f"dose-of-a-stay/{source.id}",
        title=f"Dose of a stay near {source.id}",
        asked=(distance, time, day),
        results=(
            Result("Dose", got, "dose", limits=limits_of(book, "radiation.public-dose")),
            Result("As much as natural background in", likened, "time", units=_TIMES),
        ),
        varied=(time, _MINUTES),
        fixed=(
            register_of(source, book),
            _constant_in_words(known.inputs[1].value),
            f"natural background {background}",
        ),
        note="Computed, small, not zero. Gamma and X-rays only, bare source. Within a factor of two.",
    )


def ion_current_panel(practical: Practical, book: Book, given: Mapping[str, str]) -> Iterator[Panel]:
    """Greatest ion current on another day."""
    source = source_given(practical, book, given)
    day = asked_day(book, source)
    pair = book.materials["dry-air"].figures["energy-per-ion-pair-by-alphas"].value
    current = Of(
        saturation_current,
        activity=activity_of(source, book, day),
        energy=Fixed(strongest_alpha(source, book).energy),
        share=Fixed(HALF),
        w=Fixed(pair.value),
    )
    yield Panel(
        id=f"saturation-current/{source.id}",
        title=f"Greatest ion current with {source.id} on another day",
        asked=(day,),
        results=(Result("Current", current, "current", 2, "nearest"),),
        varied=(day, later_days(day)),
        fixed=(
            register_of(source, book),
            f"energy per ion pair {pair}",
            "half of the particles enter the air",
        ),
        note="An upper bound: a fifth to the whole of it is seen.",
    )
