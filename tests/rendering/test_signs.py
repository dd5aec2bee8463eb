"""Signs: their colours, measured by painting them, and what a screen reader and a printer can take."""

import itertools
import math
import xml.etree.ElementTree as ET
from collections import Counter

import pytest

from clampstand.rendering.diagrams.objects import OBJECTS
from clampstand.rendering.diagrams.signs import BLUE, GREEN, KINDS, RED, SIGNS, YELLOW, sign
from clampstand.rendering.diagrams.svg import ELEMENTS

SVG = "{http://www.w3.org/2000/svg}"

# Directive 92/58/EEC, annex II, part 3: the share of the sign's own area each colour must have.
LEAST_SHARE = {
    "warning": (YELLOW, 0.50),
    "mandatory": (BLUE, 0.50),
    "prohibition": (RED, 0.35),
    "safe": (GREEN, 0.50),
}


def _points(element: ET.Element) -> list[tuple[float, float]]:
    pairs = (pair.split(",") for pair in element.attrib["points"].split())
    return [(float(x), float(y)) for x, y in pairs]


def _in_polygon(at: tuple[float, float], points: list[tuple[float, float]]) -> bool:
    x, y = at
    crossed = False
    for (x1, y1), (x2, y2) in zip(points, points[1:] + points[:1], strict=True):
        if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
            crossed = not crossed
    return crossed


def _near_line(at: tuple[float, float], points: list[tuple[float, float]], width: float) -> bool:
    for (x1, y1), (x2, y2) in itertools.pairwise(points):
        dx, dy = x2 - x1, y2 - y1
        share = max(0.0, min(1.0, ((at[0] - x1) * dx + (at[1] - y1) * dy) / (dx * dx + dy * dy or 1)))
        if math.hypot(at[0] - x1 - share * dx, at[1] - y1 - share * dy) <= width / 2:
            return True
    return False


def _number(element: ET.Element, name: str) -> float:
    return float(element.attrib.get(name, "0"))


def _covers(element: ET.Element, at: tuple[float, float]) -> bool:
    """Whether an element paints a point. Corner rounding of rectangles is left out: it is under 1 %."""
    match element.tag.removeprefix(SVG):
        case "circle":
            away = math.hypot(at[0] - _number(element, "cx"), at[1] - _number(element, "cy"))
            if element.attrib["fill"] == "none":
                return abs(away - _number(element, "r")) <= _number(element, "stroke-width") / 2
            return away <= _number(element, "r")
        case "ellipse":
            across = (at[0] - _number(element, "cx")) / _number(element, "rx")
            return math.hypot(across, (at[1] - _number(element, "cy")) / _number(element, "ry")) <= 1
        case "rect":
            right, down = at[0] - _number(element, "x"), at[1] - _number(element, "y")
            return 0 <= right <= _number(element, "width") and 0 <= down <= _number(element, "height")
        case "polygon":
            return _in_polygon(at, _points(element))
        case "polyline":
            return _near_line(at, _points(element), _number(element, "stroke-width"))
        case other:
            raise AssertionError(f"the painter does not know {other}")


def _painted(svg: str, each: float = 4.0) -> Counter[str]:
    """How many points of a grid each colour takes, the last element painted winning as in SVG."""
    shapes = [e for e in ET.fromstring(svg) if e.tag != f"{SVG}title"]
    count: Counter[str] = Counter()
    steps = [each * (i + 0.5) for i in range(int(200 / each))]
    for at in itertools.product(steps, steps):
        top = next((shape for shape in reversed(shapes) if _covers(shape, at)), None)
        if top is not None:
            count[top.attrib["fill"] if top.attrib["fill"] != "none" else top.attrib["stroke"]] += 1
    return count


@pytest.mark.parametrize("sign_id", SIGNS)
def test_the_safety_colour_has_its_share(sign_id: str) -> None:
    colour, least = LEAST_SHARE[SIGNS[sign_id]]
    count = _painted(sign(sign_id, "x"))
    assert count[colour] / count.total() >= least


@pytest.mark.parametrize("sign_id", SIGNS)
def test_the_object_can_be_seen(sign_id: str) -> None:
    kind = KINDS[SIGNS[sign_id]]
    count = _painted(sign(sign_id, "x"))
    bare = _painted(f'<svg xmlns="http://www.w3.org/2000/svg">{kind.field()}{kind.over()}</svg>')
    assert (count[kind.ink] - bare[kind.ink]) / count.total() > 0.03


def test_the_painter_measures_areas_it_is_told() -> None:
    whole = '<rect x="0" y="0" width="200" height="200" fill="a"/>'
    half = '<rect x="0" y="0" width="100" height="200" fill="b"/>'
    count = _painted(f'<svg xmlns="http://www.w3.org/2000/svg">{whole}{half}</svg>')
    assert count == {"a": 1250, "b": 1250}
    disc = _painted(
        '<svg xmlns="http://www.w3.org/2000/svg"><circle cx="100" cy="100" r="50" fill="c"/></svg>'
    )
    assert disc["c"] * 4**2 == pytest.approx(math.pi * 50**2, rel=0.02)


@pytest.mark.parametrize("sign_id", SIGNS)
def test_a_sign_is_an_image_with_a_title_first(sign_id: str) -> None:
    root = ET.fromstring(sign(sign_id, "Cold & <gas>"))
    assert root.attrib["role"] == "img"
    assert root[0].tag == f"{SVG}title"
    assert root[0].text == "Cold & <gas>"


@pytest.mark.parametrize("sign_id", SIGNS)
def test_a_sign_uses_only_plain_shapes(sign_id: str) -> None:
    used = {element.tag.removeprefix(SVG) for element in ET.fromstring(sign(sign_id, "x")).iter()}
    assert used <= ELEMENTS - {"text"}


@pytest.mark.parametrize("sign_id", SIGNS)
def test_nothing_leaves_the_square(sign_id: str) -> None:
    for shape in ET.fromstring(sign(sign_id, "x")).iter():
        if "points" in shape.attrib:
            half = _number(shape, "stroke-width") / 2
            assert all(half - 1 <= v <= 201 - half for point in _points(shape) for v in point)


def test_every_sign_has_its_own_object() -> None:
    assert SIGNS.keys() == OBJECTS.keys()
    assert len({sign(sign_id, "x") for sign_id in SIGNS}) == len(SIGNS)


def test_an_unknown_sign_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        sign("dragon", "Dragons")


def test_the_trefoil_has_the_standard_proportions() -> None:
    """Disc R, blades from 1.5 R to 5 R and 60° wide, one straight down (ISO 361; AERB's drawing of it)."""
    shapes = [e for e in ET.fromstring(sign("ionising-radiation", "x")) if e.attrib.get("fill") == "#000000"]
    disc = next(e for e in shapes if e.tag == f"{SVG}circle")
    centre, unit = (_number(disc, "cx"), _number(disc, "cy")), _number(disc, "r")
    blades = [_points(e) for e in shapes if e.tag == f"{SVG}polygon"][1:]
    assert len(blades) == 3
    for blade in blades:
        away = [math.dist(centre, p) / unit for p in blade]
        assert (min(away), max(away)) == (pytest.approx(1.5, abs=0.01), pytest.approx(5, abs=0.01))
    assert any(
        abs(sum(x for x, _ in blade) / len(blade) - centre[0]) < 0.01 and blade[0][1] > centre[1]
        for blade in blades
    )
