"""The formulae that live panels use; each is compiled for the browser at every build."""

from typing import Any

from clampstand.physics import counting, decay, dose, electricity, geometry, heat, ionisation, light, room_air
from clampstand.units import Formula

LIVE: tuple[Formula[Any], ...] = (
    counting.count_relative_uncertainty,
    counting.count_uncertainty,
    counting.expected_count_rate,
    counting.net_rate,
    counting.net_rate_uncertainty,
    counting.time_for_counts,
    counting.window_share,
    decay.activity_after,
    decay.share_left,
    dose.ambient_dose_rate,
    dose.background_time,
    dose.dose,
    electricity.charge_stored,
    electricity.current_through,
    electricity.energy_stored,
    electricity.peak_of,
    geometry.disc_area,
    heat.energy_supplied,
    heat.temperature_rise,
    ionisation.saturation_current,
    light.fringe_spacing,
    room_air.fraction_after,
    room_air.fraction_in_closed_room,
    room_air.gas_release,
)
