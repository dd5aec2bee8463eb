"""The curves of the demo: which practical has which, what they say in words, and where they pass."""

import re
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from clampstand.build import handbook, sheets
from clampstand.calculators.worked import CannotWork
from clampstand.checks.engine import lessons_of
from clampstand.reading import read
from clampstand.rendering.diagrams.plots import PLOTS, pictures_of
from clampstand.rendering.diagrams.svg import ELEMENTS

SVG = "{http://www.w3.org/2000/svg}"
_NUMBER = re.compile(r"[0-9]+(?:[.\u202f][0-9]+)*|10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+")
_READ = read(Path(__file__).parents[2] / "content").book
assert _READ is not None
BOOK = _READ
PICTURES = {
    f"{practical.id}: {picture.caption}": picture
    for practical in BOOK.practicals.values()
    for picture in pictures_of(practical, BOOK)
}


def only(start: str) -> ET.Element:
    found = [picture for name, picture in PICTURES.items() if name.startswith(start)]
    assert len(found) == 1, sorted(PICTURES)
    return ET.fromstring(found[0].svg)


def said(root: ET.Element) -> str:
    return root.findtext(f"{SVG}desc") or ""


def test_every_kind_of_curve_is_drawn_somewhere():
    shown = " ".join(PICTURES)
    for words in (
        "Decay of S-A2",
        "Dose rate against distance",
        "Carbon dioxide in the",
        "Ion current against voltage",
        "Beta count of the balloon",
    ):
        assert words in shown
    assert len(PLOTS) >= 5


@pytest.mark.parametrize("name", sorted(PICTURES))
def test_every_number_drawn_is_said_and_nothing_but_plain_shapes_is_used(name: str):
    root = ET.fromstring(PICTURES[name].svg)
    words = said(root)
    drawn = [n for text in root.iter(f"{SVG}text") for n in _NUMBER.findall("".join(text.itertext()))]
    assert drawn
    assert [n for n in drawn if not re.search(rf"(?<![0-9.]){re.escape(n)}(?![0-9])", words)] == []
    assert root.findtext(f"{SVG}title")
    assert {element.tag.removeprefix(SVG) for element in root.iter()} <= ELEMENTS
    colours = {value for e in root.iter() for key in ("fill", "stroke") if (value := e.get(key))}
    assert colours <= {"none", "currentColor"}, "a grey print and a dark page need ink alone"


def test_today_on_the_decay_curve_is_the_activity_the_page_works_out():
    words = said(only("spark-counter: Decay of S-A2"))
    worked = [
        number
        for _, found in sheets(lessons_of(BOOK))["spark-counter"].numbers
        if not isinstance(found, CannotWork)
        for number in found
        if number.id == "activity-today/S-A2"
    ]
    assert worked[0].shown == "36.13\u00a0kBq"
    assert "today: 36.1\u00a0kBq at 14.9\u00a0years" in words


def test_distances_kept_are_marked_where_the_inverse_square_puts_them():
    """A twentieth of the distance: four hundred times the rate."""
    words = said(only("handling-a-sealed-source: Dose rate against distance"))
    rates = {
        who: float(rate)
        for who, rate in re.findall(r"(hand|watchers), [0-9.]+\u00a0m?m: ([0-9.e-]+)\u00a0µSv", words)
    }
    assert rates["hand"] / rates["watchers"] == pytest.approx(400, rel=0.01)


def test_gas_curves_carry_both_limits_with_whose_they_are():
    words = said(only("cloud-chamber: Carbon dioxide in the large laboratory"))
    assert "limit over 8 h (law): 5000\u00a0ppm" in words
    assert "limit over 15 min (law): 15" in words
    assert "windows shut goes from 420\u00a0ppm at 0\u00a0min" in words


def test_the_chain_falls_along_the_half_life_it_seems_to_have():
    words = said(only("radon-progeny-on-a-balloon: Beta count"))
    ends = re.findall(r"goes from 100\u00a0% at 0\u00a0min to ([0-9.]+)\u00a0% at 30\u00a0min", words)
    assert len(ends) == 2
    assert float(ends[0]) == pytest.approx(float(ends[1]), rel=0.1)


def test_the_shape_of_the_ion_current_names_its_assumption():
    caption = next(p.caption for name, p in PICTURES.items() if "Ion current against voltage" in name)
    assert "not a prediction" in caption
    assert "assumes" in caption


def test_what_cannot_be_worked_out_is_not_drawn(tiny_content):
    book = handbook(tiny_content()).reading.book
    assert book is not None
    for practical in book.practicals.values():
        assert all(picture.svg.startswith("<svg") for picture in pictures_of(practical, book))
