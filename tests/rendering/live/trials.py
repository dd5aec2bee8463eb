"""Seeded random inputs for every live formula and every panel, and the script that tries them elsewhere."""

import math
import random
from functools import cache
from typing import Any

from clampstand.rendering.live.catalogue import panels_of
from clampstand.rendering.live.compiler import name_of
from clampstand.rendering.live.formulae import LIVE
from clampstand.rendering.live.panel import Panel
from clampstand.rendering.live.parts import Asked, Choice
from clampstand.rendering.live.script import live_script
from clampstand.units import Formula
from demo import demo

TIMES, TIMES_FOR_A_PANEL = 1000, 100
TOLERANCE = 1e-12

RANGES: dict[str, dict[str, tuple[float, float]]] = {
    "counting.count_relative_uncertainty": {"counts": (1, 1e6), "one": (0.5, 2)},
    "counting.count_uncertainty": {"counts": (1, 1e6), "one": (0.5, 2)},
    "counting.net_rate": {
        "gross_counts": (1, 1e6),
        "gross_time": (1, 1e4),
        "background_counts": (1, 1e6),
        "background_time": (1, 1e4),
    },
    "counting.net_rate_uncertainty": {
        "gross_counts": (1, 1e6),
        "gross_time": (1, 1e4),
        "background_counts": (1, 1e6),
        "background_time": (1, 1e4),
        "one": (0.5, 2),
    },
    "counting.expected_count_rate": {
        "activity": (1, 1e6),
        "per_decay": (0.01, 2),
        "share": (1e-5, 0.5),
        "efficiency": (0.01, 1),
        "background": (0.01, 2),
    },
    "counting.time_for_counts": {"counts": (10, 1e5), "rate": (0.1, 1e4)},
    "counting.window_share": {"distance": (1e-3, 1), "radius": (1e-3, 0.05)},
    "decay.activity_after": {"activity": (1, 1e6), "half_life": (60, 1e11), "elapsed": (1, 2e9)},
    "decay.share_left": {"half_life": (1e6, 1e11), "elapsed": (1, 2e9)},
    "dose.ambient_dose_rate": {"constant": (1e-20, 1e-16), "activity": (1, 1e6), "distance": (0.01, 10)},
    "dose.background_time": {"amount": (1e-13, 1e-3), "background": (1e-11, 1e-9)},
    "dose.dose": {"rate": (1e-16, 1e-8), "time": (1, 1e5)},
    "electricity.charge_stored": {"capacitance": (1e-12, 1e-6), "voltage": (1, 1e6)},
    "electricity.current_through": {
        "voltage": (1, 1e4),
        "series_resistance": (1e3, 1e9),
        "load_resistance": (1, 1e9),
    },
    "electricity.energy_stored": {"capacitance": (1e-12, 1e-6), "voltage": (1, 1e6)},
    "electricity.peak_of": {"rms": (1, 1e4)},
    "geometry.disc_area": {"diameter": (1e-3, 1)},
    "heat.energy_supplied": {"power": (1, 1e4), "time": (1, 1e5)},
    "heat.temperature_rise": {"energy": (1, 1e6), "mass": (0.01, 100), "specific_heat": (100, 1e4)},
    "ionisation.saturation_current": {
        "activity": (1, 1e6),
        "energy": (1e-15, 1e-12),
        "share": (0.01, 1),
        "w": (3e-18, 1e-17),
        "per_decay": (0.01, 2),
        "elementary_charge": (1.6e-19, 1.7e-19),
    },
    "light.fringe_spacing": {
        "wavelength": (4e-7, 8e-7),
        "screen_distance": (0.1, 10),
        "slit_separation": (5e-5, 1e-3),
    },
    "room_air.fraction_after": {
        "start": (4e-4, 1e-2),
        "outdoor": (3.5e-4, 6e-4),
        "release": (1e-6, 1e-3),
        "room_volume": (5, 1000),
        "air_changes": (1e-5, 1e-2),
        "time": (1, 3e4),
    },
    "room_air.fraction_in_closed_room": {
        "outdoor": (3.5e-4, 6e-4),
        "mass": (0.01, 20),
        "gas_density": (1.7, 2),
        "room_volume": (5, 1000),
    },
    "room_air.gas_release": {"mass_rate": (1e-6, 1e-2), "gas_density": (1.7, 2)},
}
"""What each argument may be here, in the formula's unit; drawn evenly by factors."""


@cache
def demo_panels() -> dict[str, Panel]:
    book = demo().book
    return {f"{p.id}: {panel.id}": panel for p in book.practicals.values() for panel in panels_of(p, book)}


def of_formula(formula: Formula) -> list[list[float]]:
    """Arguments to try, in order."""
    name = name_of(formula)
    drawn = random.Random(name)
    ranges = [RANGES[name][argument] for argument in formula.signature.parameters]
    return [[math.exp(drawn.uniform(math.log(a), math.log(b))) for a, b in ranges] for _ in range(TIMES)]


def of_panel(name: str, panel: Panel, times: int = TIMES_FOR_A_PANEL) -> list[dict[str, float]]:
    """Inputs to try, within their bounds."""
    drawn = random.Random(name)
    return [{ask.name: _one(ask, drawn) for ask in panel.asked} for _ in range(times)]


def _one(ask: Any, drawn: random.Random) -> float:
    if isinstance(ask, Choice):
        return drawn.randrange(len(ask.options))
    low, high = ask.ends
    return drawn.uniform(low, high) if isinstance(ask, Asked) else drawn.randint(int(low), int(high))


def everything() -> dict[str, Any]:
    """All trials as data: what to run and, beside it, what Python makes of it."""
    return {
        "formulae": {name_of(f): of_formula(f) for f in LIVE},
        "panels": {
            name: {"nodes": [r.data()["value"] for r in panel.results], "inputs": of_panel(name, panel)}
            for name, panel in demo_panels().items()
        },
    }


def expected() -> dict[str, Any]:
    """What Python makes of all trials."""
    return {
        "formulae": {name_of(f): [float(f.body(*arguments)) for arguments in of_formula(f)] for f in LIVE},
        "panels": {
            name: [
                [r.value.number(r.value.value_unit, inputs) for r in panel.results]
                for inputs in of_panel(name, panel)
            ]
            for name, panel in demo_panels().items()
        },
    }


RUN = """
function tryAll(trials) {
  var made = {formulae: {}, panels: {}};
  Object.keys(trials.formulae).forEach(function (name) {
    var reckon = formulae[name];
    made.formulae[name] = trials.formulae[name].map(function (some) { return reckon.apply(null, some); });
  });
  Object.keys(trials.panels).forEach(function (name) {
    var panel = trials.panels[name];
    made.panels[name] = panel.inputs.map(function (given) {
      return panel.nodes.map(function (node) { return worth(node, given); });
    });
  });
  return made;
}
"""


def script_with(ending: str) -> str:
    """The site's own script with something more at its end, inside its scope."""
    script = live_script().decode()
    end = "}());\n"
    assert script.endswith(end)
    return script[: -len(end)] + RUN + ending + end


def furthest_apart(made: dict[str, Any], wanted: dict[str, Any]) -> dict[str, float]:
    """For each formula and panel, the greatest relative difference; every one of them was tried."""
    assert made.keys() == wanted.keys()
    apart: dict[str, float] = {}
    for kind, of_kind in wanted.items():
        assert made[kind].keys() == of_kind.keys()
        for name, values in of_kind.items():
            flat = list(zip(_flat(made[kind][name]), _flat(values), strict=True))
            assert len(flat) >= (TIMES if kind == "formulae" else TIMES_FOR_A_PANEL)
            assert all(isinstance(a, float | int) and math.isfinite(b) for a, b in flat)
            apart[name] = max(abs(a - b) / (abs(b) or 1e-300) for a, b in flat)
    return apart


def _flat(values: list[Any]) -> list[float]:
    return [one for each in values for one in (each if isinstance(each, list) else [each])]
