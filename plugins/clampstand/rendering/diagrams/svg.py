"""SVG written as text: elements, escaping, points and the few shapes every drawing shares."""

import hashlib
import math
from collections.abc import Iterable, Sequence
from html import escape
from typing import TypeAlias

Point: TypeAlias = tuple[float, float]

ELEMENTS = frozenset(
    {
        "svg", "title", "desc", "g", "circle", "ellipse", "rect", "line", "polyline", "polygon", "text",
    }
)  # fmt: skip
"""Everything a drawing may use. No path, filter, mask, image, style or script: a printer, a screen reader and
a test of areas must all understand the whole drawing."""


def number(value: float) -> str:
    """A coordinate with at most two decimals and no tail of noughts, so drawings compare byte by byte."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def tag(name: str, *inside: str, **attributes: str | float) -> str:
    """An element. ``stroke_width=2`` becomes ``stroke-width="2"``; what is inside must be SVG already."""
    if name not in ELEMENTS:
        raise ValueError(f"a drawing may not use {name}")
    written = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{_attribute(value)}"' for key, value in attributes.items()
    )
    return f"<{name}{written}>{''.join(inside)}</{name}>" if inside else f"<{name}{written}/>"


def _attribute(value: str | float) -> str:
    return escape(value, quote=True) if isinstance(value, str) else number(value)


def words(text: str) -> str:
    """Text made safe to stand inside an element."""
    return escape(text, quote=False)


def along(points: Iterable[Point]) -> str:
    """Points as a polygon or polyline writes them."""
    return " ".join(f"{number(x)},{number(y)}" for x, y in points)


def arc(centre: Point, radius: float, start: float, end: float, each: float = 6) -> tuple[Point, ...]:
    """Points on an arc from one angle to another, in degrees, clockwise on the page from the right."""
    count = max(2, math.ceil(abs(end - start) / each) + 1)
    angles = (math.radians(start + (end - start) * i / (count - 1)) for i in range(count))
    return tuple((centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a)) for a in angles)


def turned(points: Iterable[Point], degrees: float, about: Point) -> tuple[Point, ...]:
    """Points turned clockwise on the page about another."""
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    x0, y0 = about
    return tuple((x0 + (x - x0) * c - (y - y0) * s, y0 + (x - x0) * s + (y - y0) * c) for x, y in points)


def drawing(title: str, says: str, body: Sequence[str], width: float, height: float, kind: str) -> str:
    """A whole drawing with its title and a description that says every number in it.

    Its ids come from its own content: the same drawing is the same bytes, and two different ones share no id.
    """
    inside = "".join(body)
    stem = "d" + hashlib.sha256(f"{title}{says}{inside}".encode()).hexdigest()[:10]
    return tag(
        "svg",
        tag("title", words(title), id=f"{stem}-title"),
        tag("desc", words(says), id=f"{stem}-desc"),
        inside,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {number(width)} {number(height)}",
        role="img",
        aria_labelledby=f"{stem}-title {stem}-desc",
        class_=f"drawing drawing-{kind}",
        fill="none",
        stroke="currentColor",
    )


def label(
    text: str, at: Point, size: float = 14, anchor: str = "start", bold: bool = False, turn: bool = False
) -> str:
    """Words in a drawing, in the ink of the page."""
    x, y = at
    extra: dict[str, str | float] = {"font_weight": "bold"} if bold else {}
    if turn:
        extra["transform"] = f"rotate(-90 {number(x)} {number(y)})"
    return tag(
        "text",
        words(text),
        x=x,
        y=y,
        font_size=size,
        text_anchor=anchor,
        fill="currentColor",
        stroke="none",
        **extra,
    )
