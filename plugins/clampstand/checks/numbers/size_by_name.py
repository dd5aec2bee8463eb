"""An item whose name gives its size has that size.

Why: people take forceps from the rack by the number in their name, and the rules judge by the length beside
it. Where the two differ, the hand is nearer to the source than anybody thinks.

Wrong:
    kit: {long-forceps: {name: 300 mm forceps}}

Right:
    kit: {long-forceps: {name: 20 cm forceps}}

Whose: this handbook: what is written twice is the same twice.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.base import is_same_value
from clampstand.model.book import Book
from clampstand.model.kit import Item
from clampstand.units import Amount, amounts_in

ID = "size-by-name"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "an item is as large as its name says")


def check_book(book: Book) -> Iterator[Problem]:
    """Every quantity in the name of an item, against the properties of the same kind."""
    for item in book.kit.values():
        for _, named in amounts_in(item.name):
            alike = [(name, its) for name, its in _properties(item) if its.kind == named.kind]
            if alike and not any(is_same_value(its, named) for _, its in alike):
                name, its = alike[0]
                yield Problem(
                    item.at(*name.split("/")),
                    f"{item.name}: {name.rpartition('/')[2].replace('_', ' ')} is {its}",
                    found=str(its),
                    needed=str(named),
                    mend="measure it, and correct the one that is wrong",
                    whose=RULE,
                    related=((item.at("name"), "its name"),),
                )


def _properties(item: Item) -> Iterator[tuple[str, Amount]]:
    """The quantities of an item, each with its route."""
    for name in ("length", "concentration", "resistance", "capacitance"):
        if (amount := getattr(item, name)) is not None:
            yield name, amount
    for name in ("greatest_voltage", "short_circuit_current") if item.output else ():
        yield f"output/{name}", getattr(item.output, name)
