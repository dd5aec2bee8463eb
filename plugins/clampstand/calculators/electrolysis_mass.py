"""Metal set free or dissolved at an electrode, by Faraday's laws."""

from collections.abc import Mapping

from clampstand.calculators.given import figure_of, number_given, substance_given
from clampstand.calculators.worked import CannotWork, Input, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.chemistry import mass_electrolysed
from clampstand.units import bare, shown_best

ELECTRONS = {"Ag": 1, "Cu": 2, "Ni": 2, "Pb": 2, "Zn": 2}
"""Electrons for each atom of a metal, from the ion it has in its common solutions."""


def electrolysis_mass(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Greatest mass a current moves in a time: ``given: {item: …, current: …, time: …}``."""
    metal = substance_given(book, given)
    current, time = number_given(practical, given, "current"), number_given(practical, given, "time")
    electrons = ELECTRONS.get(metal.formula or "")
    if electrons is None:
        raise CannotWork(f"how many electrons an atom of {metal.name} takes up is not known here")
    molar_mass = figure_of(metal, "molar-mass")
    mass = stated(
        mass_electrolysed, current.value, time.value, molar_mass.value.value, bare(float(electrons))
    )
    return (
        Worked(
            id=f"electrolysis-mass/{given['item']}",
            title=f"{metal.name} moved by {current} in {time}",
            value=mass,
            kind="mass",
            shown=shown_best(mass, "mass", 3),
            formula=mass_electrolysed.written,
            inputs=(
                written("current, I", current, f"practical, {given['current']}"),
                written("time, t", time, f"practical, {given['time']}"),
                written("molar mass, M", molar_mass.value, "reference figures", molar_mass.citation),
                Input("electrons for each atom, z", str(electrons), f"ion of {metal.formula}"),
            ),
            within="10 %",
            note="The most there can be: the whole current moves nothing else.",
        ),
    )
