"""What brings the danger of flammable vapour gives off flammable vapour.

Why: that a flame is out before a bottle is opened is judged by one word in the kit. A bottle that brings the
hazard and lacks the word may stand open beside a burner, and every rule is content.

Wrong:
    kit: {weak-acid: {hazards: vapour, never_into: sink}}

Right:
    kit: {weak-acid: {hazards: vapour, flammable_vapour: yes, never_into: sink}}

Whose: physics: one hazard is brought by things of one nature.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.kit import Item

ID = "vapour-of-its-hazard"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "what brings the hazard of vapour gives off vapour")
SIGN = "flammable"


def check_book(book: Book) -> Iterator[Problem]:
    """Every item that brings a hazard which items with flammable vapour bring, but no flame itself."""
    burning = [name for name, hazard in book.hazards.items() if hazard.sign == SIGN]
    for name in burning:
        bringers = [item for item in book.kit.values() if name in item.hazards and item.ignites is None]
        giving = [item for item in bringers if item.flammable_vapour]
        for item in bringers if giving else ():
            if not item.flammable_vapour:
                yield _problem(item, giving[0], book.hazards[name].name)


def _problem(item: Item, other: Item, hazard: str) -> Problem:
    return Problem(
        item.spot,
        f"{item.name} brings {hazard}, as {other.name} does, and is not said to give off vapour",
        found="flammable_vapour: no, written or left out",
        needed="flammable_vapour: yes",
        mend="write flammable_vapour: yes, or take the hazard off it",
        whose=RULE,
        related=((other.at("flammable_vapour"), f"written for {other.name}"),),
    )
