"""A material, or our surroundings, with the published figures that formulae take."""

from typing import ClassVar

from pydantic import model_validator

from clampstand.model.base import Entry, Id, Line, fault
from clampstand.model.substance import Figure
from clampstand.units import KINDS, Quantity

KIND_OF_FIGURE = {
    "density": "density",
    "molar-mass": "molar mass",
    "abundance-of-K-40": "fraction",
    "energy-per-ion-pair-by-electrons": "energy",
    "energy-per-ion-pair-by-alphas": "energy",
    "breakdown-field": "field strength",
    "natural-background": "dose rate",
    "all-sources": "dose rate",
}
"""The figures a material may have, by name, and the kind of quantity each is."""


class Material(Entry):
    """A material with its figures."""

    shelf: ClassVar[str] = "materials"

    name: Line
    figures: dict[Id, Figure]

    @model_validator(mode="after")
    def _figures_are_of_their_kind(self) -> "Material":
        for name, figure in self.figures.items():
            expected = KIND_OF_FIGURE.get(name)
            if expected is None:
                raise fault(
                    f"{name} is not a figure of a material", "use one of " + ", ".join(KIND_OF_FIGURE)
                )
            if figure.value.kind != expected:
                raise fault(
                    f"{name} is written as a {figure.value.kind}", f"write it like {KINDS[expected].example}"
                )
        return self

    def quantity(self, name: str) -> Quantity:
        """A figure's value. Raises KeyError for one it does not have."""
        return self.figures[name].value.value

    @property
    def citations(self) -> tuple[str, ...]:
        """Every source its figures name, each once, in the order they stand."""
        return tuple(dict.fromkeys(figure.citation for figure in self.figures.values()))
