"""A substance and its published figures, each with its condition, its uncertainty and where it was read."""

from itertools import pairwise
from typing import ClassVar

from pydantic import model_validator

from clampstand.model.base import AnyAmount, Definition, Entry, Id, Line, Words, fault
from clampstand.units import KINDS, Curve, Quantity, number_in

KIND_OF_FIGURE = {
    "molar-mass": "molar mass",
    "solid-density": "density",
    "liquid-density": "density",
    "gas-density": "density",
    "sublimation-temperature": "temperature",
    "sublimation-enthalpy": "specific energy",
    "gas-enthalpy-at-sublimation": "specific energy",
    "triple-temperature": "temperature",
    "triple-pressure": "pressure",
    "critical-temperature": "temperature",
    "critical-pressure": "pressure",
    "fraction-outdoors": "fraction",
    "oxygen-fraction": "fraction",
    "exhaled-rate": "volume rate",
    "least-box-loss": "mass rate",
    "greatest-box-loss": "mass rate",
    "lower-flammable-limit": "fraction",
    "flash-point": "temperature",
    "vapour-pressure": "pressure",
    "specific-heat": "specific heat",
    "resistivity": "resistivity",
    "young-modulus": "pressure",
    "saturation-pressure": "pressure",
    "liquid-enthalpy": "specific energy",
    "vapour-enthalpy": "specific energy",
}
"""The figures a substance may have, by name, and the kind of quantity each is."""


class Figure(Definition):
    """One published figure."""

    value: AnyAmount
    condition: Line | None = None
    """What it holds for: temperature, pressure, state."""
    uncertainty: AnyAmount | None = None
    """Of the value itself, or as a part of it in per cent."""
    citation: Id
    note: Words | None = None


class Table(Definition):
    """A figure that changes with temperature: rows of temperature and value, coldest first."""

    rows: tuple[tuple[AnyAmount, AnyAmount], ...]
    condition: Line | None = None
    uncertainty: AnyAmount | None = None
    citation: Id
    note: Words | None = None

    @model_validator(mode="after")
    def _rows_rise(self) -> "Table":
        temperatures = [temperature for temperature, _ in self.rows]
        if any(temperature.kind != "temperature" for temperature in temperatures):
            raise fault("a row of this table does not begin with a temperature", "write it like 20 °C")
        numbers = [float(temperature.value.m_as("K")) for temperature in temperatures]
        if len(numbers) < 2 or any(a >= b for a, b in pairwise(numbers)):
            raise fault(
                "the rows of this table do not rise in temperature", "write two or more, coldest first"
            )
        return self


class Substance(Entry):
    """A substance with the figures the handbook reckons with."""

    shelf: ClassVar[str] = "substances"

    name: Line
    formula: Line | None = None
    figures: dict[Id, Figure] = {}
    tables: dict[Id, Table] = {}

    @model_validator(mode="after")
    def _figures_are_of_their_kind(self) -> "Substance":
        for name, figure in self.figures.items():
            _expect(name, figure.value.kind)
        for name, table in self.tables.items():
            for _, value in table.rows:
                _expect(name, value.kind)
        return self

    def quantity(self, name: str) -> Quantity:
        """A figure's value. Raises KeyError for one it does not have."""
        return self.figures[name].value.value

    def curve(self, name: str) -> Curve:
        """A table as a curve over temperature. Raises KeyError for one it does not have."""
        unit = KINDS[KIND_OF_FIGURE[name]].coherent
        rows = self.tables[name].rows
        return Curve("K", unit, tuple((number_in(t.value, "K"), number_in(y.value, unit)) for t, y in rows))

    @property
    def citations(self) -> tuple[str, ...]:
        """Every source its figures name, each once, in the order they stand."""
        of_figures = (figure.citation for figure in self.figures.values())
        of_tables = (table.citation for table in self.tables.values())
        return tuple(dict.fromkeys((*of_figures, *of_tables)))


def _expect(name: str, kind: str) -> None:
    """Refuses a figure nobody reckons with, and one written in units of another kind."""
    expected = KIND_OF_FIGURE.get(name)
    if expected is None:
        raise fault(f"{name} is not a figure of a substance", "use one of " + ", ".join(KIND_OF_FIGURE))
    if kind != expected:
        raise fault(f"{name} is written as a {kind}", f"write it like {KINDS[expected].example}")
