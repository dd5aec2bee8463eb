"""Every closed formula on matter: it proves its units, and refuses what lies outside its range."""

import inspect
import io
import math
import tokenize

import pytest

from clampstand.physics import (
    carbon_dioxide,
    chemistry,
    dry_ice,
    electricity,
    electrons,
    gas,
    geometry,
    heat,
    light,
    mechanics,
    room_air,
    sound,
)
from clampstand.units import Formula, OutOfRange, Takes, UnlikeUnits, of_unit, quantity, unit

MODULES = (
    carbon_dioxide,
    chemistry,
    dry_ice,
    electricity,
    electrons,
    gas,
    geometry,
    heat,
    light,
    mechanics,
    room_air,
    sound,
)
FORMULAE = [
    pytest.param(value, id=f"{module.__name__.rpartition('.')[2]}.{name}")
    for module in MODULES
    for name, value in vars(module).items()
    if isinstance(value, Formula)
]


def inside(takes: Takes) -> float:
    """A number in the range of an argument."""
    low = takes.at_least if takes.at_least is not None else takes.more_than
    if low is None:
        low = 0.0 if takes.at_most is None else takes.at_most - 2
    high = takes.at_most if takes.at_most is not None else low + 2
    return low + (high - low) * 0.4


def arguments(formula: Formula) -> dict[str, float]:
    """A number for each argument; constants as they stand."""
    numbers = {}
    for name, parameter in formula.signature.parameters.items():
        takes = formula.takes[name]
        if parameter.default is parameter.empty:
            numbers[name] = inside(takes)
        else:
            numbers[name] = float(parameter.default.m_as(takes.unit))
    return numbers


@pytest.mark.parametrize("formula", FORMULAE)
def test_arithmetic_on_quantities_gives_the_declared_unit_and_the_same_number(formula: Formula) -> None:
    numbers = arguments(formula)
    proved = formula.proves_its_units(**numbers)
    called = formula(**{name: quantity(n, formula.takes[name].unit) for name, n in numbers.items()})
    assert proved.units == unit(formula.gives) == called.units
    assert called.magnitude == pytest.approx(proved.magnitude, rel=1e-12)


BRANCHES = [
    (electricity.discharge_time, {"voltage": 9, "safe_voltage": 3}, {"voltage": 3, "safe_voltage": 9}),
    (room_air.greatest_mass_for_limit, {"limit": 0.5, "start": 0.1}, {"limit": 0.1, "start": 0.5}),
    (room_air.fraction_after, {"air_changes": 1e-3, "time": 1e3}, {"air_changes": 0, "time": 1e3}),
    (room_air.mean_fraction, {"air_changes": 1e-3, "time": 1e3}, {"air_changes": 0, "time": 1e3}),
    (room_air.time_to_clear, {"rise": 0.5, "safe_rise": 0.1}, {"rise": 0.1, "safe_rise": 0.5}),
    (
        dry_ice.snow_fraction,
        {"fluid_enthalpy": 1, "gas_enthalpy": 2},
        {"fluid_enthalpy": 2, "gas_enthalpy": 1},
    ),
    (dry_ice.cylinder_contents, {"full_mass": 2, "tare": 1}, {"full_mass": 1, "tare": 2}),
    (dry_ice.mass_left_in_box, {"mass": 9, "loss": 1}, {"mass": 1, "loss": 9}),
    (
        light.hazard_distance,
        {"power": 1, "beam_diameter": 1e-3, "exposure_limit": 25},
        {"power": 1e-6, "beam_diameter": 1, "exposure_limit": 25},
    ),
    (mechanics.energy_of_compressed_gas, {"absolute_pressure": 7e5}, {"absolute_pressure": 5e4}),
]


@pytest.mark.parametrize(("formula", "first", "second"), BRANCHES)
def test_both_branches_give_the_declared_unit(formula: Formula, first: dict, second: dict) -> None:
    for chosen in (first, second):
        numbers = {**arguments(formula), **chosen}
        proved = formula.proves_its_units(**numbers)
        called = formula(**{name: quantity(n, formula.takes[name].unit) for name, n in numbers.items()})
        assert called.magnitude == pytest.approx(proved.magnitude, rel=1e-12)


def test_every_formula_with_two_branches_is_among_them() -> None:
    tested = {formula.__name__ for formula, _, _ in BRANCHES}
    bodies = (param.values[0].body for param in FORMULAE)
    assert {body.__name__ for body in bodies if "if" in _names(body)} == tested


def _names(body) -> set[str]:
    """The words of a function's source outside its texts and comments."""
    words = tokenize.generate_tokens(io.StringIO(inspect.getsource(body)).readline)
    return {word.string for word in words if word.type == tokenize.NAME}


def beyond(takes: Takes) -> list[float]:
    """Numbers just outside the range of an argument."""
    outside = [math.nan, math.inf]
    if takes.at_least is not None:
        outside.append(takes.at_least - abs(takes.at_least) * 1e-3 - 1e-9)
    if takes.more_than is not None:
        outside.append(takes.more_than)
    if takes.at_most is not None:
        outside.append(takes.at_most * 1.001 + 1e-9)
    return outside


@pytest.mark.parametrize("formula", FORMULAE)
def test_each_argument_outside_its_range_is_refused(formula: Formula) -> None:
    numbers = arguments(formula)
    for name, takes in formula.takes.items():
        for wrong in beyond(takes):
            tried = {**numbers, name: wrong}
            with pytest.raises(OutOfRange, match=name):
                formula(**{n: of_unit(v, unit(formula.takes[n].unit)) for n, v in tried.items()})


@pytest.mark.parametrize("formula", FORMULAE)
def test_a_quantity_of_another_kind_is_refused(formula: Formula) -> None:
    numbers = arguments(formula)
    for name in formula.takes:
        tried = {n: quantity(v, formula.takes[n].unit) for n, v in numbers.items()}
        with pytest.raises(UnlikeUnits):
            formula(**{**tried, name: quantity(1, "Bq")})


@pytest.mark.parametrize("formula", FORMULAE)
def test_says_how_it_is_written_and_shows_an_example(formula: Formula) -> None:
    assert "=" in formula.written
    assert ">>>" in (formula.__doc__ or "")
