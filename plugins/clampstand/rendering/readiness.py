"""Whether anything on record speaks against running a practical today, and what."""

from collections.abc import Iterable

from clampstand.findings import Finding
from clampstand.model.practical import Practical
from clampstand.rendering.contents import Contents


def against(practical: Practical, contents: Contents) -> tuple[Finding, ...]:
    """What speaks against it: findings about it, and findings that leave it no source, supply or room.

    A fault of one source counts only when no other that the practical allows is free of faults, and the same
    goes for its supplies and rooms: the page must not say no where the second choice will do. What an
    exception allows is printed as an exception and is no reason against it.
    """
    book = contents.book
    allowed = {exception.rule for exception in practical.exceptions if exception.expires >= contents.day}
    found = [
        finding
        for finding in contents.about(f"practicals/{practical.id}")
        if finding.stops or finding.rule not in allowed
    ]
    for slot in practical.sources:
        found += _if_none_is_left((f"sources/{source}" for source in slot.one_of), contents)
    for circuit in practical.circuits:
        found += _if_none_is_left((f"supplies/{unit.id}" for unit in book.units_of(circuit.supply)), contents)
    for rooms in practical.where.values():
        found += _if_none_is_left((f"rooms/{room}" for room in rooms), contents)
    return tuple(dict.fromkeys(found))


def _if_none_is_left(choices: Iterable[str], contents: Contents) -> list[Finding]:
    """The findings about every choice, when each of them has some."""
    found = [contents.about(choice) for choice in choices]
    return [finding for of_one in found for finding in of_one] if all(found) else []
