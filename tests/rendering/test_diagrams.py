"""Diagrams: drawn to scale, and every number in them said in words."""

import re
import xml.etree.ElementTree as ET
from collections.abc import Callable

import pytest

import tiny
from clampstand.findings import Layer
from clampstand.rendering.diagrams.bench import Distance, bench, distances
from clampstand.rendering.diagrams.circuit import Wiring, circuit
from clampstand.rendering.diagrams.curve import Axis, Ceiling, Line, Mark, Scale, plot, printed
from clampstand.rendering.diagrams.svg import ELEMENTS, number, tag
from clampstand.units import q

SVG = "{http://www.w3.org/2000/svg}"
_NUMBER = re.compile(r"[0-9]+(?:[.\u202f][0-9]+)*|10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+")

STOOD = (
    Distance("hands", q("100 mm"), "100\u00a0mm"),
    Distance("people", q("0.5 m"), "0.5\u00a0m"),
    Distance("watchers", q("2 m"), "2\u00a0m"),
    Distance("electronics", q("3 m"), "3\u00a0m"),
)
DECAY = Line("Sr-90", tuple((float(t), 185 * 0.5 ** (t / 28.8)) for t in range(41)))
FALL = Line("from Co-60", tuple((d / 10, 0.0565 / (d / 10) ** 2) for d in range(1, 21)))

DRAWINGS: dict[str, Callable[[], str]] = {
    "bench": lambda: bench("Spark counter", STOOD),
    "circuit, d.c.": lambda: circuit(
        "Ionisation current",
        Wiring("supply", "2\u00a0kV", "plates", "50\u00a0MΩ", "10\u00a0MΩ", "2\u00a0nF", "shorting lead"),
    ),
    "circuit, a.c.": lambda: circuit("Lamp", Wiring("supply", "6.3\u00a0V", "heater", alternating=True)),
    "curve": lambda: plot(
        "Decay of a source",
        Axis("age", "years"),
        Axis("activity", "kBq"),
        [DECAY],
        [Ceiling("greatest activity", 200, Layer.LOCAL)],
        [Mark("today", (27.8, 94.7))],
    ),
    "curve by factors": lambda: plot(
        "Dose rate", Axis("distance", "m", True), Axis("dose rate", "µSv/h", True), [FALL, DECAY_LOW],
        [Ceiling("teaching", 1, Layer.GUIDANCE)],
    ),
}  # fmt: skip
DECAY_LOW = Line("from Cs-137", tuple((d / 10, 0.0141 / (d / 10) ** 2) for d in range(1, 21)))


@pytest.mark.parametrize("name", DRAWINGS)
def test_every_number_drawn_is_said(name: str) -> None:
    root = ET.fromstring(DRAWINGS[name]())
    said = root.findtext(f"{SVG}desc") or ""
    drawn = [found for text in root.iter(f"{SVG}text") for found in _NUMBER.findall("".join(text.itertext()))]
    assert drawn
    assert [n for n in drawn if not re.search(rf"(?<![0-9.]){re.escape(n)}(?![0-9])", said)] == []


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_drawing_is_named_and_plain(name: str) -> None:
    root = ET.fromstring(DRAWINGS[name]())
    assert {e.tag.removeprefix(SVG) for e in root.iter()} <= ELEMENTS
    ids = {e.attrib["id"] for e in root.iter() if "id" in e.attrib}
    assert set(root.attrib["aria-labelledby"].split()) == ids
    assert root.attrib["role"] == "img"
    assert root.findtext(f"{SVG}title")


@pytest.mark.parametrize("name", DRAWINGS)
def test_ink_is_the_pages_own(name: str) -> None:
    for element in ET.fromstring(DRAWINGS[name]()).iter():
        for paint in ("fill", "stroke"):
            assert element.attrib.get(paint, "none") in ("none", "currentColor")


@pytest.mark.parametrize("name", DRAWINGS)
def test_the_same_drawing_is_the_same_bytes(name: str) -> None:
    assert DRAWINGS[name]() == DRAWINGS[name]()


def test_two_drawings_share_no_id() -> None:
    ids = [re.findall(r' id="([^"]+)"', draw()) for draw in DRAWINGS.values()]
    flat = [one for some in ids for one in some]
    assert len(flat) == len(set(flat))


def test_the_plan_is_to_scale() -> None:
    """Each dimension line is as long as its distance, by the same scale as the bar."""
    root = ET.fromstring(bench("x", STOOD))
    across = [
        abs(float(line.attrib["x2"]) - float(line.attrib["x1"]))
        for line in root.iter(f"{SVG}line")
        if line.attrib["y1"] == line.attrib["y2"] and float(line.attrib["x1"]) == 70
    ]
    *dimensions, bar = across
    assert [length / bar for length in dimensions] == pytest.approx([0.1, 0.5, 2, 3], rel=1e-3)


def test_people_stand_behind_their_line() -> None:
    root = ET.fromstring(bench("x", STOOD[2:3]))
    person = next(root.iter(f"{SVG}ellipse"))
    away = ((float(person.attrib["cx"]) - 70) ** 2 + (float(person.attrib["cy"]) - 202) ** 2) ** 0.5
    dimension = next(line for line in root.iter(f"{SVG}line") if line.attrib["x1"] == "70")
    assert away - float(person.attrib["rx"]) > float(dimension.attrib["x2"]) - 70


def test_no_distance_no_plan() -> None:
    assert bench("x", ()) == ""


def test_a_part_that_is_not_there_is_not_drawn() -> None:
    whole = DRAWINGS["circuit, d.c."]()
    bare = circuit("x", Wiring("supply", "5\u00a0V", "lamp"))
    assert "in series" in whole
    assert "in series" not in bare
    assert "only when off" not in bare
    assert whole.count("<rect") == bare.count("<rect") + 2


def test_a_supplys_kind_of_current_is_said() -> None:
    assert "a.c." in DRAWINGS["circuit, a.c."]()
    assert "a.c." not in DRAWINGS["circuit, d.c."]()


def test_scales_place_values() -> None:
    even = Scale(0, 200, 100, 500, by_factors=False)
    assert (even.at(0), even.at(50), even.at(200)) == (100, 200, 500)
    factors = Scale(0.01, 100, 0, 400, by_factors=True)
    assert [factors.at(v) for v in (0.01, 0.1, 1, 100)] == pytest.approx([0, 100, 200, 400])
    assert factors.ticks == pytest.approx((0.01, 0.1, 1, 10, 100))


def test_whose_limit_it_is_is_written_and_drawn() -> None:
    def drawn(whose: Layer) -> str:
        return plot("x", Axis("time", "s"), Axis("gas", "ppm"), [DECAY], [Ceiling("air", 150, whose)])

    law, guidance, local = drawn(Layer.LAW), drawn(Layer.GUIDANCE), drawn(Layer.LOCAL)
    assert "air (law): 150" in law
    assert "air (guidance): 150" in guidance
    assert "air (local rule): 150" in local
    dashes = re.compile(r'stroke-width="3.5" stroke-dasharray="([^"]+)"')
    assert len({found for d in (law, guidance, local) for found in dashes.findall(d)}) == 3


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (0, "0"),
        (0.25, "0.25"),
        (5000, "5000"),
        (15000, "15\u202f000"),
        (1e-6, "10⁻⁶"),
        (2.5e7, "2.5 × 10⁷"),
        (-78.5, "−78.5"),
    ],
)
def test_numbers_are_printed_short(value: float, text: str) -> None:
    assert printed(value) == text


@pytest.mark.parametrize("points", [(), ((0.0, 1.0), (1.0, float("inf"))), ((0.0, 1.0), (1.0, 2.0))])
def test_what_cannot_be_drawn_is_refused(points: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(ValueError, match="time"):
        plot("x", Axis("time", "s", by_factors=True), Axis("time", "s"), [Line("a", points)])


def test_words_of_an_author_cannot_become_markup() -> None:
    drawn = circuit("<script>", Wiring('"><script>alert(1)</script>', "5 V", "<b>lamp"))
    assert "<script" not in drawn
    assert ET.fromstring(drawn).findtext(f"{SVG}title") == "Circuit: <script>"


def test_no_other_element_can_be_written() -> None:
    with pytest.raises(ValueError, match="script"):
        tag("script")


def test_coordinates_are_short() -> None:
    assert [number(v) for v in (1, 1.5, 1 / 3, -0.001, 100)] == ["1", "1.5", "0.33", "0", "100"]


def _kept(*steps: dict[str, str]) -> dict[str, str]:
    run = [{"do": "Do it.", "by": "teacher", "takes": "1 min", "stand": stand} for stand in steps]
    numbers = {
        "reach": {"value": "100 mm", "obeys": "radiation.hand-to-source"},
        "wall": {"value": "2 mm", "because": "held by its cap"},
    }
    return {d.end: d.printed for d in distances(tiny.practical(run=run, numbers=numbers))}


def test_the_plan_shows_the_distance_to_stand_at_and_not_that_of_one_movement():
    assert _kept({"hands": "wall"}, {"hands": "reach"}) == {"hands": "100\u00a0mm"}
    assert _kept({"hands": "wall"}) == {"hands": "2\u00a0mm"}
    assert _kept({"hands": "reach"}, {"watchers": "2 m"}) == {"hands": "100\u00a0mm", "watchers": "2\u00a0m"}
