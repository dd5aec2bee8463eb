"""What an item's hazards forbid as a way of waste, the item forbids too.

Why: the list of ways it may never go is what the practical is judged by, and what the technician reads. One
way left out, or slipped into another, is open for whatever is left over.

Wrong:
    hazards: {vapour: {never_into: [sink, bin]}}
    kit: {thin-spirit: {never_into: bin}}

Right:
    hazards: {vapour: {never_into: [sink, bin]}}
    kit: {thin-spirit: {never_into: [bin, sink]}}

Whose: the department's own rule; how waste goes is law in many places.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "routes-of-its-hazards"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "what a hazard forbids as waste is forbidden for all that brings it")


def check_book(book: Book) -> Iterator[Problem]:
    """Every item of the kit, against every hazard it brings."""
    for item in book.kit.values():
        for name in item.hazards:
            hazard = book.hazards.get(name)
            missing = [way for way in hazard.never_into if way not in item.never_into] if hazard else []
            if hazard is not None and missing:
                yield Problem(
                    item.at("never_into"),
                    f"{item.name} brings {hazard.name}, which may never go into {' or '.join(missing)}",
                    found=f"never_into: {', '.join(item.never_into) or 'nothing'}",
                    needed=", ".join(hazard.never_into),
                    mend=f"write {', '.join(missing)} under never_into",
                    whose=RULE,
                    related=((hazard.at("never_into"), "forbidden here"),),
                )
