"""Worked numbers: the catalogue of what a definition may ask to be computed."""

from collections.abc import Mapping

from clampstand.calculators.activity_today import activity_of_slot
from clampstand.calculators.alpha import alpha_range, saturation_current_of
from clampstand.calculators.beam_deflection import beam_circle, beam_deflection
from clampstand.calculators.circuits import series_current_given, stored_given
from clampstand.calculators.dose import dose_of_the_lesson, dose_rate_at
from clampstand.calculators.electron_speed import electron_speed
from clampstand.calculators.fringe_spacing import fringe_spacing
from clampstand.calculators.gas_of_solid import gas_of_solid
from clampstand.calculators.progeny import progeny_half_life
from clampstand.calculators.room_air import carbon_dioxide_in_room
from clampstand.calculators.sheet import Calculator
from clampstand.calculators.snow import snow_yield
from clampstand.calculators.sphere_charge import sphere_charge
from clampstand.calculators.temperature_rise import specific_heat_seen, temperature_rise
from clampstand.calculators.wire_resistance import wire_resistance

CALCULATORS: Mapping[str, Calculator] = {
    "activity-today": activity_of_slot,
    "alpha-range": alpha_range,
    "beam-circle": beam_circle,
    "beam-deflection": beam_deflection,
    "carbon-dioxide-in-room": carbon_dioxide_in_room,
    "dose-of-the-lesson": dose_of_the_lesson,
    "dose-rate-at": dose_rate_at,
    "electron-speed": electron_speed,
    "fringe-spacing": fringe_spacing,
    "gas-of-solid": gas_of_solid,
    "progeny-half-life": progeny_half_life,
    "saturation-current": saturation_current_of,
    "series-current": series_current_given,
    "snow-yield": snow_yield,
    "specific-heat-seen": specific_heat_seen,
    "sphere-charge": sphere_charge,
    "stored-charge-and-energy": stored_given,
    "temperature-rise": temperature_rise,
    "wire-resistance": wire_resistance,
}
"""Calculator by the word a definition's ``compute`` uses; every calculator is listed here by hand."""
