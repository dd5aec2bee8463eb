"""A gas cylinder stands upright and secured, above ground, and one that gives liquid has no regulator.

Why: a regulator on a dip-tube cylinder fills with liquid, freezes and bursts. A cylinder that lies gives the
wrong phase, one that falls may break its valve, and one that leaks in a cellar fills the cellar.

Wrong:
    kit:
      tall-cylinder: {cylinder: {regulator: yes}}

Right:
    kit:
      tall-cylinder: {cylinder: {dip_tube: no, regulator: yes}}

Whose: the department's own rule, after the gas suppliers' instructions.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.book import Book
from clampstand.model.kit import Cylinder, Item

ID = "cylinder-stands-right"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "cylinders upright, chained and above ground; no regulator on a dip tube")


def check_book(book: Book) -> Iterator[Problem]:
    """Every cylinder of the kit."""
    for item in book.kit.values():
        if item.cylinder is not None:
            for spot, fault, needed, mend in _faults(book, item, item.cylinder):
                yield Problem(spot, f"{item.name} {fault}", found=fault, needed=needed, mend=mend, whose=RULE)


def _faults(book: Book, item: Item, cylinder: Cylinder) -> Iterator[tuple[Spot, str, str, str]]:
    spot = item.at("cylinder")
    if cylinder.dip_tube and cylinder.regulator:
        yield (
            spot.to("regulator"),
            "has a dip tube and a pressure regulator",
            "no regulator on a cylinder that gives liquid",
            "take the regulator off, or use a cylinder that gives gas",
        )
    if not cylinder.upright:
        yield spot, "does not stand upright", "upright: yes", "stand it up, then write so"
    if not cylinder.secured:
        yield spot, "is not secured", "secured: yes", "chain it, strap it or cage it, then write so"
    room = book.rooms.get(item.kept_in or "")
    if room is not None and room.level == "below ground":
        yield (
            item.at("kept_in"),
            f"is kept in {room.id}, below ground",
            "a place above ground, best in the open air",
            "keep it somewhere else",
        )
