"""A supply that no class may use is marked as one that only looks like the others.

Why: two supplies of one maker look alike, and one of them kills. Where the list counts it among those that
may go out, the day sheet offers it, and somebody carries it to the bench.

Wrong:
    supplies: {W-1: {decoy: no}}

Right:
    supplies: {W-1: {decoy: yes}}

Whose: the department's own rule, by the limit on what a supply may drive.
"""

from collections.abc import Iterator

from clampstand.checks.supplies import can_hurt_in, kind_of_current, size_of, used_as_supplies
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, the_limit, whose
from clampstand.model.book import Book

ID = "deadly-supply-marked"
SEVERITY = Severity.WARNING
LIMIT = "electrical.current"


def check_book(book: Book) -> Iterator[Problem]:
    """Every supply in use whose kind drives more than any may; what a practical uses is judged there."""
    used = used_as_supplies(book)
    for unit in book.supplies.values():
        output = book.kit[unit.item].output if unit.item in book.kit else None
        if output is None or unit.decoy or unit.status != "in use" or unit.item in used:
            continue
        limit = the_limit(LIMIT, book, current=output.current)
        if (
            limit is None
            or not can_hurt_in(book, output)
            or keeps(size_of(output.short_circuit_current), limit)
        ):
            continue
        item = book.kit[unit.item]
        yield Problem(
            unit.spot,
            f"{unit.id} ({item.name}) can drive {output.short_circuit_current} of {kind_of_current(output)}, "
            "which no supply for a class may",
            found="decoy: no, written or left out",
            needed="decoy: yes",
            mend="write decoy: yes, and keep it apart from those it looks like; or take it out of use",
            whose=whose(limit),
            related=((item.at("output"), "what its kind can drive"),),
        )
