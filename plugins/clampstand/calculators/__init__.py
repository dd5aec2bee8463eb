"""Worked numbers: the catalogue of what a definition may ask to be computed."""

from collections.abc import Mapping

from clampstand.calculators.activity_today import activity_of_slot
from clampstand.calculators.alpha import alpha_range, saturation_current_of
from clampstand.calculators.circuits import series_current_given, stored_given
from clampstand.calculators.dose import dose_of_the_lesson, dose_rate_at
from clampstand.calculators.progeny import progeny_half_life
from clampstand.calculators.room_air import carbon_dioxide_in_room
from clampstand.calculators.sheet import Calculator
from clampstand.calculators.snow import snow_yield

CALCULATORS: Mapping[str, Calculator] = {
    "activity-today": activity_of_slot,
    "alpha-range": alpha_range,
    "carbon-dioxide-in-room": carbon_dioxide_in_room,
    "dose-of-the-lesson": dose_of_the_lesson,
    "dose-rate-at": dose_rate_at,
    "progeny-half-life": progeny_half_life,
    "saturation-current": saturation_current_of,
    "series-current": series_current_given,
    "snow-yield": snow_yield,
    "stored-charge-and-energy": stored_given,
}
"""Calculator by the word a definition's ``compute`` uses; every calculator is listed here by hand."""
