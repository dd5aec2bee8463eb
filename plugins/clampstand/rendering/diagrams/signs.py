"""Safety signs drawn from shape, colour and a plain object, in the style of ISO 3864.

Own drawings: the shape and the colour carry the meaning, the object says which hazard, and words always stand
beside them. Shares of colour follow Directive 92/58/EEC, annex II: yellow at least half of a warning sign,
blue of a mandatory one, green of a sign for safety, and red at least 35 % of a prohibition.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from clampstand.rendering.diagrams.objects import OBJECTS
from clampstand.rendering.diagrams.svg import Point, along, arc, tag, words

YELLOW, RED, BLUE, GREEN, BLACK, WHITE = "#f9a800", "#9b2423", "#005387", "#237f52", "#000000", "#ffffff"
"""The safety colours as sRGB, after RAL 1003, 3001, 5005 and 6032 (ISO 3864-4 asks for these fields)."""

_APEX, _BASE, _EDGE, _CORNER = 10.0, 184.0, 8.0, 10.0
_HALF_BASE = (_BASE - _APEX) / 3**0.5


@dataclass(frozen=True, slots=True)
class Kind:
    """A family of signs: what it means, its field, and the ink of its object."""

    means: str
    colour: str
    ink: str
    field: Callable[[], str]
    over: Callable[[], str] = lambda: ""


def sign(sign_id: str, title: str) -> str:
    """A sign as SVG. Raises KeyError for a sign that is none of :data:`SIGNS`."""
    kind = KINDS[SIGNS[sign_id]]
    return tag(
        "svg",
        tag("title", words(title)),
        kind.field(),
        OBJECTS[sign_id](kind.ink, kind.colour if kind.colour != RED else WHITE),
        kind.over(),
        xmlns="http://www.w3.org/2000/svg",
        viewBox="0 0 200 200",
        role="img",
        class_=f"sign sign-{SIGNS[sign_id]}",
    )


def _triangle(inset: float) -> tuple[Point, ...]:
    """An equilateral triangle with round corners, so far inside the largest one."""
    top, base = _APEX + 2 * inset, _BASE - inset
    half = (base - top) / 3**0.5
    radius = max(_CORNER - inset, 2.0)
    corners: tuple[tuple[Point, float], ...] = (
        ((100, top + 2 * radius), 210),
        ((100 + half - radius * 3**0.5, base - radius), 330),
        ((100 - half + radius * 3**0.5, base - radius), 90),
    )
    return tuple(p for centre, start in corners for p in arc(centre, radius, start, start + 120))


def _warning() -> str:
    return tag("polygon", points=along(_triangle(0)), fill=BLACK) + tag(
        "polygon", points=along(_triangle(_EDGE)), fill=YELLOW
    )


def _mandatory() -> str:
    return tag("circle", cx=100, cy=100, r=95, fill=BLUE)


def _prohibition() -> str:
    return tag("circle", cx=100, cy=100, r=95, fill=RED) + tag("circle", cx=100, cy=100, r=76, fill=WHITE)


def _bar() -> str:
    ends = [arc((100, 100), 86, a, a + 6)[0] for a in (225, 45)]
    return tag("polyline", points=along(ends), fill="none", stroke=RED, stroke_width=15.2)


def _safe() -> str:
    return tag("rect", x=5, y=5, width=190, height=190, rx=10, fill=GREEN)


KINDS: Mapping[str, Kind] = {
    "warning": Kind("warning", YELLOW, BLACK, _warning),
    "mandatory": Kind("must be done", BLUE, WHITE, _mandatory),
    "prohibition": Kind("not allowed", RED, BLACK, _prohibition, _bar),
    "safe": Kind("help", GREEN, WHITE, _safe),
}

SIGNS: Mapping[str, str] = {
    "ionising-radiation": "warning",
    "electricity": "warning",
    "low-temperature": "warning",
    "asphyxiation": "warning",
    "flammable": "warning",
    "gas-cylinder": "warning",
    "noise": "warning",
    "laser": "warning",
    "general": "warning",
    "corrosive": "warning",
    "biological": "warning",
    "hot-surface": "warning",
    "eye-protection": "mandatory",
    "insulating-gloves": "mandatory",
    "ear-protection": "mandatory",
    "ventilate": "mandatory",
    "wash-hands": "mandatory",
    "no-flame": "prohibition",
    "no-eating": "prohibition",
    "no-lift": "prohibition",
    "first-aid": "safe",
    "telephone": "safe",
}
"""Every sign and its family."""
