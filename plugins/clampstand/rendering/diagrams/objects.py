"""The plain object inside each safety sign, drawn in its ink on its field."""

import math
from collections.abc import Callable, Mapping, Sequence
from typing import TypeAlias

from clampstand.rendering.diagrams.svg import Point, along, arc, tag, turned

Object: TypeAlias = Callable[[str, str], str]
"""Draws an object from its ink and the colour of the field behind it."""

_IN_TRIANGLE: Point = (100, 126)
_MIDDLE: Point = (100, 100)


def stroke(points: Sequence[Point], ink: str, width: float) -> str:
    """A line of even width with round ends."""
    return tag(
        "polyline",
        points=along(points),
        fill="none",
        stroke=ink,
        stroke_width=width,
        stroke_linecap="round",
        stroke_linejoin="round",
    )


def _solid(points: Sequence[Point], ink: str) -> str:
    return tag("polygon", points=along(points), fill=ink)


def _dot(centre: Point, radius: float, ink: str) -> str:
    return tag("circle", cx=centre[0], cy=centre[1], r=radius, fill=ink)


def _box(x: float, y: float, width: float, height: float, ink: str, round_by: float = 0) -> str:
    return tag("rect", x=x, y=y, width=width, height=height, rx=round_by, fill=ink)


def _wave(start: Point, end: Point, swing: float, turns: float) -> tuple[Point, ...]:
    """A wavy line from one point to another."""
    (x0, y0), (x1, y1) = start, end
    length = math.hypot(x1 - x0, y1 - y0)
    across = (-(y1 - y0) / length, (x1 - x0) / length)
    shares = (i / 24 for i in range(25))
    return tuple(
        (x0 + (x1 - x0) * t + across[0] * s, y0 + (y1 - y0) * t + across[1] * s)
        for t in shares
        for s in (swing * math.sin(2 * math.pi * turns * t),)
    )


def _flame(base: Point, height: float, ink: str) -> str:
    """A flame standing on a point: one long tongue and one short."""
    shape = (
        (0, 0), (-0.26, -0.06), (-0.38, -0.22), (-0.36, -0.4), (-0.22, -0.58), (-0.12, -0.76),
        (-0.1, -1), (0.06, -0.86), (0.15, -0.66), (0.17, -0.5), (0.25, -0.62), (0.35, -0.44),
        (0.38, -0.24), (0.26, -0.06),
    )  # fmt: skip
    return _solid([(base[0] + x * height, base[1] + y * height) for x, y in shape], ink)


def trefoil(ink: str, _field: str) -> str:
    """Centre disc R, three blades of 60° from 1.5 R to 5 R, one straight down."""
    unit = 8.6
    blades = [
        (*arc(_IN_TRIANGLE, 5 * unit, a - 30, a + 30), *arc(_IN_TRIANGLE, 1.5 * unit, a + 30, a - 30))
        for a in (90, 210, 330)
    ]
    return _dot(_IN_TRIANGLE, unit, ink) + "".join(_solid(blade, ink) for blade in blades)


def _lightning(ink: str, _field: str) -> str:
    bolt = (
        (110, 60), (78, 122), (98, 118), (86, 154), (78, 150), (82, 172), (100, 158), (93, 156),
        (120, 104), (100, 108), (120, 66),
    )  # fmt: skip
    return _solid(bolt, ink)


def _snowflake(ink: str, _field: str) -> str:
    arm = ((100, 126), (100, 84))
    twigs = ((90, 90), (100, 100), (110, 90))
    return "".join(
        stroke(turned(part, a, _IN_TRIANGLE), ink, 5.5) for a in range(0, 360, 60) for part in (arm, twigs)
    )


def _under_gas(ink: str, _field: str) -> str:
    """A person who has sunk to the floor below the level of a gas."""
    gas = (_wave((80, y), (120, y), 4, 2) if y < 90 else _wave((66, y), (134, y), 4, 3) for y in (86, 103))
    body = stroke(((74, 156), (104, 152), (122, 166), (142, 166)), ink, 13)
    arm = stroke(((80, 154), (70, 168), (54, 168)), ink, 7)
    return "".join(stroke(line, ink, 5.5) for line in gas) + body + arm + _dot((62, 146), 10.5, ink)


def _burning(ink: str, field: str) -> str:
    return _flame((100, 158), 82, ink) + _flame((101, 156), 34, field) + _box(60, 162, 80, 8, ink)


def _cylinder(ink: str, field: str) -> str:
    body = _box(82, 98, 36, 76, ink, 12) + _box(82, 150, 36, 24, ink)
    valve = _box(94, 80, 12, 24, ink) + _box(82, 76, 36, 8, ink, 4)
    return body + valve + _box(82, 114, 36, 6, field)


def _loud(ink: str, _field: str) -> str:
    horn = ((60, 116), (74, 116), (94, 96), (94, 160), (74, 140), (60, 140))
    waves = (arc((92, 128), r, -45, 45) for r in (16, 30, 44))
    return _solid(horn, ink) + "".join(stroke(wave, ink, 6) for wave in waves)


def _beam(ink: str, _field: str) -> str:
    """Rays from a bright point, and one far longer than the rest."""
    at = (84, 130)
    rays = (stroke(turned(((84, 114), (84, 96)), a, at), ink, 4.5) for a in range(0, 360, 45) if a != 90)
    return _dot(at, 11, ink) + "".join(rays) + stroke((at, (146, 130)), ink, 6)


def _exclamation(ink: str, _field: str) -> str:
    stem = ((89, 74), (111, 74), (106, 140), (94, 140))
    return _solid((*arc((100, 74), 11, 180, 360), *stem[1:]), ink) + _dot((100, 158), 10, ink)


def _eaten(ink: str, field: str) -> str:
    """A tube that drips on a slab and eats a hole into it."""
    tube = turned(((70, 92), (118, 92), (118, 106), (70, 106)), 12, (100, 98))
    drops = "".join(_dot((121, y), r, ink) for y, r in ((118, 4.5), (132, 5.5)))
    slab = _box(54, 152, 92, 20, ink)
    return _solid(tube, ink) + drops + slab + _dot((121, 151), 13, field) + _dot((108, 152), 6, field)


def _biohazard(ink: str, field: str) -> str:
    """Three open horns about a ring."""
    x, y = _IN_TRIANGLE[0], _IN_TRIANGLE[1] + 2
    ways = [(math.cos(math.radians(a)), math.sin(math.radians(a))) for a in (270, 30, 150)]
    horns = "".join(_dot((x + 21 * dx, y + 21 * dy), 24, ink) for dx, dy in ways)
    mouths = "".join(_dot((x + 27 * dx, y + 27 * dy), 18.5, field) for dx, dy in ways)
    gaps = "".join(
        stroke(((x + 30 * dx, y + 30 * dy), (x + 60 * dx, y + 60 * dy)), field, 9) for dx, dy in ways
    )
    ring = tag("circle", cx=x, cy=y, r=20, fill="none", stroke=ink, stroke_width=6)
    return horns + mouths + gaps + ring + _dot((x, y), 6, field)


def _hot(ink: str, _field: str) -> str:
    heat = (_wave((x, 148), (x, 94), 5, 1.25) for x in (78, 100, 122))
    return "".join(stroke(line, ink, 7) for line in heat) + _box(54, 158, 92, 10, ink)


def _head(ink: str) -> str:
    shoulders = (*arc((100, 182), 50, 195, 345), *arc(_MIDDLE, 86, 60, 120))
    return tag("ellipse", cx=100, cy=88, rx=42, ry=52, fill=ink) + _solid(shoulders, ink)


def _goggles(ink: str, field: str) -> str:
    lenses = "".join(_box(x, 68, 32, 26, field, 9) for x in (64, 104))
    return _head(ink) + _box(54, 75, 92, 8, field) + lenses


def _muffs(ink: str, field: str) -> str:
    band = stroke(arc((100, 84), 52, 180, 360), field, 17) + stroke(arc((100, 84), 52, 180, 360), ink, 9)
    cups = "".join(_box(x - 4, 68, 32, 52, field, 13) + _box(x, 72, 24, 44, ink, 10) for x in (37, 139))
    return _head(ink) + band + cups


def _glove(ink: str, field: str) -> str:
    """A long glove with a snowflake on its cuff."""
    fingers = "".join(
        stroke(((x, 96), (tip, top)), ink, 15)
        for x, tip, top in ((78, 72, 52), (94, 92, 42), (110, 112, 43), (126, 131, 54))
    )
    thumb = stroke(((126, 122), (150, 92)), ink, 16)
    hand = _box(70, 84, 64, 52, ink, 14) + _box(64, 128, 76, 42, ink, 6)
    flake = "".join(stroke(turned(((102, 139), (102, 163)), a, (102, 151)), field, 4.5) for a in (0, 60, 120))
    return fingers + thumb + hand + flake


def _open_window(ink: str, field: str) -> str:
    """Air blowing out of an open window."""
    frame = _box(46, 44, 70, 112, ink) + _box(55, 53, 52, 94, field)
    wing = _solid(((116, 44), (144, 60), (144, 140), (116, 156)), ink)
    pane = _solid(((122, 58), (137, 67), (137, 133), (122, 142)), field)
    air = "".join(
        stroke(_wave((62, y), (158, y), 5, 2), ink, 8) + _solid(((156, y - 11), (174, y), (156, y + 11)), ink)
        for y in (80, 106)
    )
    return frame + wing + pane + air


def _tap(ink: str, _field: str) -> str:
    pipe = stroke(((50, 54), (96, 54), (108, 66), (108, 78)), ink, 15) + _box(62, 34, 26, 8, ink, 4)
    stem = _box(71, 38, 8, 14, ink)
    drops = "".join(_box(x, y, 6, 16, ink, 3) for x, y in ((96, 94), (108, 102), (120, 94)))
    hands = stroke(((52, 142), (74, 130), (104, 130)), ink, 13) + stroke(
        ((54, 160), (88, 152), (150, 132)), ink, 14
    )
    return pipe + stem + drops + hands


def _match(ink: str, _field: str) -> str:
    return stroke(((84, 148), (112, 98)), ink, 10) + _flame((116, 104), 58, ink)


def _meal(ink: str, _field: str) -> str:
    mug = _box(106, 92, 36, 46, ink, 5) + stroke(arc((142, 113), 12, -80, 80), ink, 6)
    fork = stroke(((72, 92), (72, 146)), ink, 8) + "".join(
        stroke(((x, 62), (x, 84)), ink, 5) for x in (63, 72, 81)
    )
    return mug + fork + stroke(((63, 86), (72, 94), (81, 86)), ink, 6)


def _lift(ink: str, field: str) -> str:
    """A person in a cabin that goes up and down."""
    cabin = _box(64, 66, 72, 84, ink, 3) + _box(71, 73, 58, 70, field)
    person = _dot((100, 88), 9, ink) + _box(89, 100, 22, 26, ink, 7) + _box(93, 120, 14, 23, ink)
    arrows = _solid(((84, 60), (94, 44), (104, 60)), ink) + _solid(((96, 156), (106, 172), (116, 156)), ink)
    return cabin + person + arrows


def _cross(ink: str, _field: str) -> str:
    return _box(80, 38, 40, 124, ink) + _box(38, 80, 124, 40, ink)


def _handset(ink: str, _field: str) -> str:
    """A handset, held as to an ear."""
    handle = turned(arc((100, 146), 70, 222, 318), -45, _MIDDLE)
    ends = (
        turned(((x - 18, 92), (x + 18, 92), (x + 18, 122), (x - 18, 122)), a, (x, 104))
        for x, a in ((52, -12), (148, 12))
    )
    return stroke(handle, ink, 22) + "".join(_solid(turned(end, -45, _MIDDLE), ink) for end in ends)


OBJECTS: Mapping[str, Object] = {
    "ionising-radiation": trefoil,
    "electricity": _lightning,
    "low-temperature": _snowflake,
    "asphyxiation": _under_gas,
    "flammable": _burning,
    "gas-cylinder": _cylinder,
    "noise": _loud,
    "laser": _beam,
    "general": _exclamation,
    "corrosive": _eaten,
    "biological": _biohazard,
    "hot-surface": _hot,
    "eye-protection": _goggles,
    "insulating-gloves": _glove,
    "ear-protection": _muffs,
    "ventilate": _open_window,
    "wash-hands": _tap,
    "no-flame": _match,
    "no-eating": _meal,
    "no-lift": _lift,
    "first-aid": _cross,
    "telephone": _handset,
}
