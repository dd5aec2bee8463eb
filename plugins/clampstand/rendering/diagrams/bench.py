"""Plan of where people stand, to scale: the dangerous thing, and the distances everyone keeps from it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from clampstand.model.book import Book
from clampstand.model.practical import PHASES, Practical
from clampstand.model.step import DistanceEnds
from clampstand.rendering.diagrams.svg import Point, along, arc, drawing, label, tag
from clampstand.rendering.prose import unbroken
from clampstand.units import Quantity, is_over, number_in, q, shown_best

_WIDTH, _LEFT, _RIGHT = 640.0, 70.0, 60.0
_ROW = 38.0
_ENDS: dict[DistanceEnds, str] = {
    "hands": "hand to source",
    "people": "people to live parts",
    "watchers": "watchers",
    "electronics": "electronics",
}
"""What each kind of distance is called in the drawing."""
_ANGLES: dict[DistanceEnds, float] = {"hands": -20, "people": -34, "watchers": -12, "electronics": -3}


@dataclass(frozen=True, slots=True)
class Distance:
    """A distance somebody or something keeps: from what, how far, and as printed."""

    end: DistanceEnds
    far: Quantity
    printed: str


def distances(practical: Practical, *, greatest: bool = False) -> tuple[Distance, ...]:
    """The least distance each end keeps in any step, or the greatest, nearest first; no step, no distance.

    A lesser distance than the one that obeys a limit is what a single movement allows, as where a gloved
    hand holds a bottle by its cap: the step says so, and it is no distance to stand at.
    """
    kept: dict[DistanceEnds, Distance] = {}
    said = (pair for phase in PHASES for step in practical.steps(phase) for pair in step.stand.items())
    pairs = list(dict.fromkeys(said))
    ruled = {end for end, name in pairs if _obeys(name, practical)} if not greatest else set()
    for end, name in pairs:
        if end in ruled and not _obeys(name, practical):
            continue
        found = _distance(end, name, practical)
        known = kept.get(end)
        if found is not None and (known is None or is_over(known.far, found.far) != greatest):
            kept[end] = found
    return tuple(sorted(kept.values(), key=lambda d: (number_in(d.far, "m"), d.end)))


def _obeys(name: str, practical: Practical) -> bool:
    """Whether a distance is a declared number that obeys a limit."""
    number = practical.numbers.get(name)
    return number is not None and bool(number.obeys)


def _distance(end: DistanceEnds, name: str, practical: Practical) -> Distance | None:
    """The distance a step names: a declared number, or a quantity written out."""
    number = practical.numbers.get(name)
    if number is not None:
        return Distance(end, number.value.low, unbroken(str(number.value)))
    try:
        far = q(name)
    except ValueError:
        return None
    return Distance(end, far, unbroken(name))


def bench_of(practical: Practical, _book: Book) -> str:
    """The plan of a practical; empty where its steps name no distance."""
    return bench(practical.title, distances(practical))


def bench(title: str, kept: Sequence[Distance]) -> str:
    """The plan as SVG, to scale, with a dimension line for every distance; empty where there is none."""
    if not kept:
        return ""
    longest = max(number_in(d.far, "m") for d in kept)
    scale = (_WIDTH - _LEFT - _RIGHT) / longest
    reach = min(longest * scale, 190.0)
    middle: Point = (_LEFT, reach + 12)
    floor = middle[1] + 66
    body = [
        *_bench_top(middle),
        *(piece for d in kept for piece in _kept(d, middle, scale, reach)),
        *(piece for row, d in enumerate(kept) for piece in _dimension(d, middle, floor + _ROW * row, scale)),
        *_scale_bar(middle[0], floor + _ROW * len(kept) + 8, scale, longest),
    ]
    height = floor + _ROW * len(kept) + 40
    return drawing(f"Where to stand: {title}", _says(kept, longest), body, _WIDTH, height, "bench")


def _says(kept: Sequence[Distance], longest: float) -> str:
    least = "; ".join(f"{_ENDS[d.end]} at least {d.printed}" for d in kept)
    bar = shown_best(_bar_length(longest), "length", figures=1)
    return (
        f"Plan from above, to scale, distances measured from the middle of the apparatus: {least}. "
        f"A bar shows the scale: {bar}."
    )


def _bar_length(longest: float) -> Quantity:
    return q("1 m") if longest >= 1.5 else q("100 mm")


def _bench_top(middle: Point) -> list[str]:
    """The corner of the bench with the apparatus on it."""
    x, y = middle
    return [
        tag("rect", x=4, y=y - 44, width=x + 26, height=88, rx=4, stroke_width=1.5, stroke_dasharray="6 4"),
        label("bench", (10, y + 38), 13),
        tag("circle", cx=x, cy=y, r=7, fill="currentColor"),
        tag("circle", cx=x, cy=y, r=11, stroke_width=1.5),
    ]


def _kept(distance: Distance, middle: Point, scale: float, reach: float) -> list[str]:
    """The arc at a distance and who or what keeps behind it."""
    far = number_in(distance.far, "m") * scale
    steepest = min(60.0, math.degrees(reach / far))
    lowest = math.degrees(math.asin(min(1.0, 40 / far)))
    edge = arc(middle, far, -steepest, lowest, each=2)
    line = tag("polyline", points=along(edge), stroke_width=2, stroke_dasharray="3 4")
    if distance.end == "hands":
        return [line]
    at = arc(middle, far + 18, _ANGLES[distance.end], _ANGLES[distance.end] + 1)[0]
    figure = _thing(at) if distance.end == "electronics" else _person(at)
    return [line, *figure]


def _person(at: Point) -> list[str]:
    """A person from above: shoulders and head."""
    x, y = at
    return [
        tag("ellipse", cx=x, cy=y, rx=9, ry=17, stroke_width=2),
        tag("circle", cx=x - 2, cy=y, r=7, fill="currentColor"),
    ]


def _thing(at: Point) -> list[str]:
    """A device from above."""
    x, y = at
    return [
        tag("rect", x=x - 10, y=y - 14, width=20, height=28, rx=3, stroke_width=2),
        tag("line", x1=x - 5, y1=y + 8, x2=x + 5, y2=y + 8, stroke_width=2),
    ]


def _dimension(distance: Distance, middle: Point, y: float, scale: float) -> list[str]:
    """A dimension line from the apparatus, with arrowheads and its words beside or above it."""
    start, end = middle[0], middle[0] + number_in(distance.far, "m") * scale
    text = f"{_ENDS[distance.end]}: at least {distance.printed}"
    head = min(8.0, (end - start) / 2)
    heads = (
        ((start, y), (start + head, y - 4), (start + head, y + 4)),
        ((end, y), (end - head, y - 4), (end - head, y + 4)),
    )
    beside = end - start < 300
    at = (end + 12, y + 5) if beside else ((start + end) / 2, y - 6)
    return [
        tag("line", x1=start, y1=y, x2=end, y2=y, stroke_width=1.5),
        *(tag("polygon", points=along(h), fill="currentColor", stroke="none") for h in heads),
        *(tag("line", x1=x, y1=y - 7, x2=x, y2=y + 7, stroke_width=1.5) for x in (start, end)),
        label(text, at, 15, "start" if beside else "middle", bold=True),
    ]


def _scale_bar(x: float, y: float, scale: float, longest: float) -> list[str]:
    bar = _bar_length(longest)
    end = x + number_in(bar, "m") * scale
    return [
        tag("line", x1=x, y1=y, x2=end, y2=y, stroke_width=5),
        label(f"scale: {shown_best(bar, 'length', figures=1)}", (end + 12, y + 5), 13),
    ]
