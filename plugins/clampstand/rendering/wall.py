"""How far the line on the floor is, and what else is kept back: what a sheet for the wall says."""

from dataclasses import dataclass

from clampstand.model.practical import Practical
from clampstand.model.step import DistanceEnds
from clampstand.rendering.diagrams.bench import Distance, distances

_LINE_OF: tuple[DistanceEnds, ...] = ("watchers", "people")
"""Whose distance the line on the floor is laid at: the watchers', or else everybody's."""
_FURTHER: dict[DistanceEnds, str] = {
    "people": "Live parts:",
    "electronics": "Electronics:",
}
"""What else is kept away, and the words before its distance."""


@dataclass(frozen=True, slots=True)
class Wall:
    """What the sheet says: how far the line is, and what else is kept how far."""

    line: Distance
    further: tuple[tuple[str, str], ...]


def wall_of(practical: Practical) -> Wall | None:
    """What the sheet of a practical says; None where no step keeps anybody back."""
    kept = {distance.end: distance for distance in distances(practical, greatest=True)}
    whose = next((end for end in _LINE_OF if end in kept), None)
    if whose is None:
        return None
    further = ((words, kept[end].printed) for end, words in _FURTHER.items() if end in kept and end != whose)
    return Wall(kept[whose], tuple(further))
