"""Making up a solution for the whole class: how much is made, and how much solid that takes."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from clampstand.calculators.given import figure_of, number_given, substance_given
from clampstand.calculators.kit_totals import kit_totals
from clampstand.calculators.worked import CannotWork, Input, Worked, measured, stated, written
from clampstand.model.book import Book
from clampstand.model.kit import Item
from clampstand.model.practical import Practical
from clampstand.physics.chemistry import mass_for_solution
from clampstand.units import Amount, Quantity, UnlikeUnits, number_in, shown_best

MOST_STEPS = 1000
"""More vessels than that are a slip of the pen."""


@dataclass(frozen=True, slots=True)
class Batch:
    """One solution for one class.

    Args:
        item: what is made.
        concentration: how strong it is.
        wanted: what the kit list asks for, allowances and spares included.
        made: that, rounded up to whole vessels.
        vessel: what it is made in.
    """

    item: Item
    concentration: Amount
    wanted: Quantity
    made: Quantity
    vessel: Amount

    @property
    def inputs(self) -> tuple[Input, ...]:
        """What a worked number about it rests on."""
        return (
            measured("volume wanted", self.wanted, "volume", "kit list, whole class"),
            written("made in steps of", self.vessel, "practical"),
            measured("volume made, V", self.made, "volume", "whole class, rounded up"),
            written("concentration, c", self.concentration, self.item.name),
        )


def batch_of(practical: Practical, book: Book, given: Mapping[str, str]) -> Batch:
    """What is made of a solution: ``given: {item: …, vessel: …}``, the vessel a declared volume.

    Raises:
        CannotWork: the kit list measures out no such solution, or its strength is not known.
    """
    item_id = given.get("item", "")
    item = book.kit.get(item_id)
    if item is None or item.concentration is None:
        raise CannotWork("it needs to be given item: the id of a solution whose concentration the kit knows")
    parts = [t.in_all for t in kit_totals(practical, book) if t.line.item == item_id and t.in_all is not None]
    if not parts:
        raise CannotWork(f"the kit list does not say how much of {item.name} each needs")
    vessel = number_given(practical, given, "vessel")
    try:
        wanted = sum(parts[1:], parts[0])
        steps = math.ceil(number_in((wanted / vessel.low), "") - 1e-9)
    except (UnlikeUnits, ZeroDivisionError):
        raise CannotWork(f"{item.name} and its vessel are not both volumes above nought") from None
    if not 0 < steps <= MOST_STEPS:
        raise CannotWork(f"{item.name} would fill {steps} vessels")
    return Batch(item, item.concentration, wanted, steps * vessel.low, vessel)


def make_up(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Volume made and mass of solid for it: ``given: {item: …, vessel: …}``."""
    batch = batch_of(practical, book, given)
    solid = substance_given(book, given)
    molar_mass = figure_of(solid, "molar-mass")
    name = solid.name[:1].lower() + solid.name[1:]
    mass = stated(mass_for_solution, batch.concentration.value, batch.made, molar_mass.value.value)
    return (
        volume_made(batch),
        Worked(
            id=f"make-up/{given['item']}/mass",
            title=f"Mass of {name}, for {shown_best(batch.made, 'volume', 3)}",
            value=mass,
            kind="mass",
            shown=shown_best(mass, "mass", 3),
            formula=mass_for_solution.written,
            inputs=(
                *batch.inputs,
                written("molar mass, M", molar_mass.value, solid.formula or solid.name, molar_mass.citation),
            ),
            within="1 %",
            note="The label of the bottle must show this formula, water and all.",
        ),
    )


def volume_made(batch: Batch) -> Worked:
    """How much is made, as a worked number."""
    return Worked(
        id=f"made/{batch.item.id}",
        title=f"Volume of {batch.item.name} made for the class",
        value=batch.made,
        kind="volume",
        shown=shown_best(batch.made, "volume", 3),
        formula="whole class, rounded up",
        inputs=batch.inputs,
        within="exact",
    )
