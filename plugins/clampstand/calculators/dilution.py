"""Diluting a stock solution for the whole class: how much of it, into how much water."""

from collections.abc import Mapping

from clampstand.calculators.make_up import batch_of, volume_made
from clampstand.calculators.worked import CannotWork, Worked, stated, written
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.physics.chemistry import volume_to_dilute
from clampstand.units import is_over, shown_best


def dilution(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """Stock and water for a class's solution: ``given: {item: …, stock: …, vessel: …}``."""
    batch = batch_of(practical, book, given)
    stock = book.kit.get(given.get("stock", ""))
    if stock is None or stock.concentration is None:
        raise CannotWork("it needs to be given stock: the id of a solution whose concentration the kit knows")
    if stock.substance != batch.item.substance:
        raise CannotWork(f"{batch.item.name} cannot be made from {stock.name}")
    if is_over(batch.concentration.value, stock.concentration.value):
        raise CannotWork(f"{stock.name} is weaker than what is to be made of it")
    volume = stated(volume_to_dilute, stock.concentration.value, batch.concentration.value, batch.made)
    water = batch.made - volume
    inputs = (*batch.inputs, written("concentration of the stock, c₁", stock.concentration, stock.name))
    return (
        volume_made(batch),
        Worked(
            id=f"dilution/{batch.item.id}/stock",
            title=f"Volume of {stock.name} to add to the water",
            value=volume,
            kind="volume",
            shown=shown_best(volume, "volume", 3),
            formula=volume_to_dilute.written,
            inputs=inputs,
            within="2 %",
        ),
        Worked(
            id=f"dilution/{batch.item.id}/water",
            title="Water that is there first",
            value=water,
            kind="volume",
            shown=shown_best(water, "volume", 3),
            formula="V − V₁",
            inputs=inputs,
            within="2 %",
            note="The acid goes into the water, never the other way round.",
        ),
    )
