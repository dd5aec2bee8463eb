"""Every closed formula on radiation: its arithmetic gives the unit it declares, and it keeps to its range."""

import math

import pytest
from scipy import constants, stats

from clampstand.physics import (
    attenuation,
    counting,
    decay,
    detection,
    dose,
    dose_rules,
    ionisation,
    ranges,
)
from clampstand.units import Formula, OutOfRange, of_unit, quantity, unit
from physics.sampling import arguments, beyond

MODULES = (attenuation, counting, decay, detection, dose, dose_rules, ionisation, ranges)
FORMULAE = [
    pytest.param(value, id=f"{module.__name__.rpartition('.')[2]}.{name}")
    for module in MODULES
    for name, value in vars(module).items()
    if isinstance(value, Formula)
]

SAMPLES = {
    "half_life_from_two": {"first": 9.0, "second": 3.0},
    "transient_equilibrium_ratio": {"parent_half_life": 9.0, "daughter_half_life": 3.0},
    "true_rate": {"observed": 900.0, "dead_time": 1e-4},
    "paschen_voltage": {"pressure": 1e5, "gap": 0.01, "a": 11.25, "b": 273.75, "gamma": 0.01},
}
"""Arguments that must suit each other, where numbers taken one by one would not."""


def sample(formula: Formula) -> dict[str, float]:
    return {**arguments(formula), **SAMPLES.get(formula.__name__, {})}


@pytest.mark.parametrize("formula", FORMULAE)
def test_arithmetic_on_quantities_gives_the_declared_unit_and_the_same_number(formula: Formula) -> None:
    numbers = sample(formula)
    proved = formula.proves_its_units(**numbers)
    called = formula(**{name: quantity(n, formula.takes[name].unit) for name, n in numbers.items()})
    assert proved.units == unit(formula.gives) == called.units
    assert called.magnitude == pytest.approx(proved.magnitude, rel=1e-12)
    assert math.isfinite(called.magnitude)


@pytest.mark.parametrize("formula", FORMULAE)
def test_each_argument_outside_its_range_is_refused(formula: Formula) -> None:
    numbers = sample(formula)
    for name, takes in formula.takes.items():
        for wrong in beyond(takes):
            tried = {**numbers, name: wrong}
            with pytest.raises(OutOfRange, match=name):
                formula(**{n: of_unit(v, unit(formula.takes[n].unit)) for n, v in tried.items()})


@pytest.mark.parametrize("formula", FORMULAE)
def test_every_docstring_has_units_source_and_a_worked_example(formula: Formula) -> None:
    words = formula.__doc__ or ""
    assert "Source:" in words or "source as" in words
    assert ">>>" in words


@pytest.mark.parametrize(
    ("formula", "unsuited"),
    [
        (decay.half_life_from_two, {"first": 3.0, "second": 3.0}),
        (decay.half_life_from_two, {"first": 3.0, "second": 9.0}),
        (decay.transient_equilibrium_ratio, {"parent_half_life": 3.0, "daughter_half_life": 3.0}),
        (counting.true_rate, {"observed": 1e4, "dead_time": 1e-4}),
        (ionisation.paschen_voltage, {"gap": 1e-7}),
    ],
)
def test_arguments_that_do_not_suit_each_other_are_refused(formula: Formula, unsuited: dict) -> None:
    numbers = {**sample(formula), **unsuited}
    with pytest.raises(OutOfRange):
        formula(**{name: quantity(n, formula.takes[name].unit) for name, n in numbers.items()})


def test_constants_are_those_of_codata() -> None:
    assert decay.AVOGADRO.m_as("1/mol") == constants.N_A
    assert ionisation.ELEMENTARY_CHARGE.m_as("C") == constants.e
    for module in (dose_rules, ranges):
        assert pytest.approx(constants.mega * constants.eV, rel=1e-15) == module.MEV
    assert detection.K_95.magnitude == pytest.approx(stats.norm.ppf(0.95), rel=1e-15)
    assert quantity(1, "R").m_as("C/kg") == 2.58e-4
