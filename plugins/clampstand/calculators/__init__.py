"""Worked numbers: the catalogue of what a definition may ask to be computed."""

from collections.abc import Mapping

from clampstand.calculators.activity_today import activity_of_slot
from clampstand.calculators.alpha import alpha_range, saturation_current_of
from clampstand.calculators.attenuation import beta_range, half_thickness
from clampstand.calculators.beam_deflection import beam_circle, beam_deflection, specific_charge_seen
from clampstand.calculators.circuits import series_current_given, stored_given
from clampstand.calculators.counting_time import counting_time, expected_rate
from clampstand.calculators.counts import net_count, scatter_of_counts, uncertainty_of_count
from clampstand.calculators.decay_left import decay_left, grown_again
from clampstand.calculators.detection_limit import detection_limit
from clampstand.calculators.dilution import dilution
from clampstand.calculators.dose import dose_of_the_lesson, dose_rate_at
from clampstand.calculators.electrolysis_mass import electrolysis_mass
from clampstand.calculators.electron_speed import electron_speed
from clampstand.calculators.electroscope import electroscope_fall
from clampstand.calculators.fringe_spacing import fringe_spacing, wavelength_seen
from clampstand.calculators.gas_from_reaction import hydrogen_of_piece, sulfur_dioxide_in_room
from clampstand.calculators.gas_of_solid import gas_of_solid
from clampstand.calculators.make_up import make_up
from clampstand.calculators.measured_lines import centre_of_detector, half_life_measured
from clampstand.calculators.potassium_activity import potassium_activity
from clampstand.calculators.progeny import progeny_half_life
from clampstand.calculators.rate_ratio import rate_ratio
from clampstand.calculators.room_air import carbon_dioxide_in_room
from clampstand.calculators.round_area import round_area
from clampstand.calculators.saturation import saturation_pressure
from clampstand.calculators.sheet import Calculator
from clampstand.calculators.snow import snow_yield
from clampstand.calculators.sphere_charge import sphere_charge
from clampstand.calculators.temperature_rise import specific_heat_seen, temperature_rise
from clampstand.calculators.true_rate import rate_mended
from clampstand.calculators.vapour import flammable_air
from clampstand.calculators.wire_resistance import wire_resistance

CALCULATORS: Mapping[str, Calculator] = {
    "activity-today": activity_of_slot,
    "alpha-range": alpha_range,
    "beam-circle": beam_circle,
    "beam-deflection": beam_deflection,
    "beta-range": beta_range,
    "carbon-dioxide-in-room": carbon_dioxide_in_room,
    "count-uncertainty": uncertainty_of_count,
    "counting-time": counting_time,
    "decay-left": decay_left,
    "detection-limit": detection_limit,
    "dilution": dilution,
    "dose-of-the-lesson": dose_of_the_lesson,
    "dose-rate-at": dose_rate_at,
    "effective-centre": centre_of_detector,
    "electrolysis-mass": electrolysis_mass,
    "electron-speed": electron_speed,
    "electroscope-fall": electroscope_fall,
    "expected-count-rate": expected_rate,
    "flammable-air": flammable_air,
    "fringe-spacing": fringe_spacing,
    "gas-of-solid": gas_of_solid,
    "grown-again": grown_again,
    "half-life-of-counts": half_life_measured,
    "half-thickness": half_thickness,
    "hydrogen-of-piece": hydrogen_of_piece,
    "make-up": make_up,
    "net-count": net_count,
    "potassium-activity": potassium_activity,
    "progeny-half-life": progeny_half_life,
    "rate-ratio": rate_ratio,
    "round-area": round_area,
    "saturation-current": saturation_current_of,
    "saturation-pressure": saturation_pressure,
    "scatter-of-counts": scatter_of_counts,
    "series-current": series_current_given,
    "snow-yield": snow_yield,
    "specific-charge": specific_charge_seen,
    "specific-heat-seen": specific_heat_seen,
    "sphere-charge": sphere_charge,
    "stored-charge-and-energy": stored_given,
    "sulfur-dioxide-in-room": sulfur_dioxide_in_room,
    "temperature-rise": temperature_rise,
    "true-rate": rate_mended,
    "wavelength-of-fringes": wavelength_seen,
    "wire-resistance": wire_resistance,
}
"""Calculator by the word a definition's ``compute`` uses; every calculator is listed here by hand."""
