"""Published tables of one quantity against another: attenuation, absorption, dose per fluence, ranges."""

from itertools import pairwise
from typing import ClassVar

from pydantic import model_validator

from clampstand.model.base import AnyAmount, Definition, Entry, Id, Line, Number, Words, fault
from clampstand.units import Curve

TABLE_UNITS = {
    "MeV": "MeV",
    "keV": "keV",
    "cm²/g": "cm**2/g",
    "m²/kg": "m**2/kg",
    "g/cm²": "g/cm**2",
    "pSv cm²": "pSv*cm**2",
}
"""The units a table's columns may be in, as written, and what they are to the registry."""


class Axis(Definition):
    """What one column of a table holds, and in which unit."""

    quantity: Line
    unit: Line

    @model_validator(mode="after")
    def _unit_is_known(self) -> "Axis":
        if self.unit not in TABLE_UNITS:
            raise fault(f"{self.unit} is not a unit of these tables", "use one of " + ", ".join(TABLE_UNITS))
        return self


class CoefficientTable(Entry):
    """One table. Rows rise in x; two rows with the same x are the two sides of an absorption edge."""

    shelf: ClassVar[str] = "coefficients"

    title: Line
    of: Line
    """The material, or whatever else it holds for."""
    x: Axis
    y: Axis
    rows: tuple[tuple[Number, Number], ...]
    condition: Line | None = None
    uncertainty: AnyAmount
    citation: Id
    note: Words | None = None

    @model_validator(mode="after")
    def _rows_rise(self) -> "CoefficientTable":
        if len(self.rows) < 2 or any(b[0] < a[0] for a, b in pairwise(self.rows)):
            raise fault("the rows of this table do not rise", "write two or more, the smallest first")
        if any(number <= 0 for row in self.rows for number in row):
            raise fault("a number of this table is not above zero", "leave out rows that are nil")
        return self

    @property
    def curve(self) -> Curve:
        """The table as a curve that formulae can read."""
        return Curve(TABLE_UNITS[self.x.unit], TABLE_UNITS[self.y.unit], self.rows)
