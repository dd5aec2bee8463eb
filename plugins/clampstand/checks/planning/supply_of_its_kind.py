"""A supply on the list is of a kind that gives a voltage.

Why: the test of a supply is held against what its kind can give. Listed as something else, the one supply
that drives too much is looked for among the tested ones in vain, and nobody misses it.

Wrong:
    supplies: {T-1: {item: shorting-rod}}

Right:
    supplies: {T-1: {item: high-supply}}

Whose: this handbook: what can hurt is described.
"""

from collections.abc import Iterator

from clampstand.checks.supplies import used_as_supplies
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "supply-of-its-kind"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a supply has an output")


def check_book(book: Book) -> Iterator[Problem]:
    """Every supply owned, against the kit; what a practical uses as one is judged there."""
    used = used_as_supplies(book)
    for unit in book.supplies.values():
        item = book.kit.get(unit.item)
        if item is not None and item.output is None and not unit.decoy and unit.item not in used:
            yield Problem(
                unit.at("item"),
                f"{unit.id} is listed as a {item.name}, and a {item.name} gives no voltage",
                found=f"item: {unit.item}",
                needed="an item of the kit with an output",
                mend="read on its plate what it is, and name that, or write the output of its kind",
                whose=RULE,
                related=((item.spot, "described here without an output"),),
            )
