"""What ends as gas in the room, or holds gas under pressure, brings a hazard of gas.

Why: a cylinder names many dangers, of cold, of noise and of falling over. If the gas is not among them, no
practical has to say what is done about it, and it is the one that nobody notices.

Wrong:
    kit: {cold-pellets: {hazards: deep-cold}}

Right:
    kit: {cold-pellets: {hazards: [heavy-gas, deep-cold]}}

Whose: physics.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "gas-brings-its-hazard"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "gas spreads in the room it is let out in")


def check_book(book: Book) -> Iterator[Problem]:
    """Every item that turns to gas, and every cylinder of which it is said what is in it."""
    for item in book.kit.values():
        holds_gas = item.turns_to_gas or (item.cylinder is not None and item.substance is not None)
        hazards = [book.hazards[name] for name in item.hazards if name in book.hazards]
        if holds_gas and not any(hazard.family == "gas" for hazard in hazards):
            yield Problem(
                item.at("hazards"),
                f"{item.name} gives gas, and brings no hazard of gas",
                found=", ".join(item.hazards) or "no hazards",
                needed="a hazard of the family gas",
                mend="write the hazard of its gas under hazards",
                whose=RULE,
            )
