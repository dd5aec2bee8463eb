"""The page of worked numbers: every calculator with its formula, its inputs, its source and its example."""

import html
import re
from pathlib import Path

import pytest

from clampstand.build import handbook, sheets
from clampstand.calculators import CALCULATORS
from clampstand.checks import RULES
from clampstand.rendering.contents import Contents
from clampstand.rendering.pages.numbers import formulae_in, numbers_page
from clampstand.rendering.site import pages
from demo import demo_contents

_CONTENTS = demo_contents()
_PAGE = numbers_page(_CONTENTS)
SECTIONS = {
    found[1]: html.unescape(found[2])
    for found in re.finditer(
        r'<section class="number">\s*<h2 id="([a-z-]+)">(.*?)</section>', _PAGE.html, re.DOTALL
    )
}


def test_every_calculator_has_a_section_and_the_page_is_in_the_navigation():
    assert set(SECTIONS) == set(CALCULATORS)
    assert _PAGE.in_navigation
    assert "numbers/index.md" in (Path(__file__).parents[2] / "mkdocs.yml").read_text("utf-8")


@pytest.mark.parametrize("name", sorted(CALCULATORS))
def test_a_section_says_what_it_works_out_and_shows_an_example_if_there_is_one(name: str):
    section = SECTIONS[name]
    assert re.search(r"<p>[A-Z][^<]{15,}\.</p>", section)
    assert "given:" not in section
    if "No practical asks" not in section:
        assert 'class="worked__value"' in section or "cannot be worked out" in section
        assert "Asked for by" in section


def test_a_formula_is_shown_with_symbols_units_range_and_source():
    (shown,) = formulae_in("Ḣ = k · A / d²")
    assert [(a.name, a.unit) for a in shown.arguments] == [
        ("constant", "Sv·m²/decay"),
        ("activity", "Bq"),
        ("distance", "m"),
    ]
    assert shown.arguments[2].holds == "at least 0.01"
    assert shown.gives == "Sv/s"
    assert shown.source.startswith("inverse-square law")
    assert shown.says == "Ambient dose-equivalent rate H*(10) of a small bare source at a distance."


def test_a_formula_of_two_parts_is_shown_in_both():
    both = formulae_in("R = A · y · g · ε + R_B, g = ½·(1 − d/√(d² + r²)), R_B = 0")
    assert [one.gives for one in both] == ["count/s", "a pure number"]
    assert formulae_in("something else") == ()


def test_panels_stand_where_there_are_any():
    for name in ("activity-today", "carbon-dioxide-in-room", "counting-time"):
        assert "data-live=" in SECTIONS[name]
    assert "data-live=" not in SECTIONS["alpha-range"]


def test_an_empty_handbook_still_has_the_page(tiny_content):
    judged = handbook(tiny_content())
    contents = Contents(judged.book, sheets(judged.lessons), judged.findings, RULES)
    page = next(page for page in pages(contents) if page.uri == "numbers/index.html")
    assert page.html.count('class="number"') == len(CALCULATORS)


def test_the_source_of_a_formula_is_not_cut_short_at_an_abbreviation():
    (limit,) = formulae_in("A = L_D / (ε·t)")
    assert limit.source == "Currie, Anal. Chem. 40 (1968) 586"
    (current,) = formulae_in("I = V/(Rₛ + R)")
    assert current.source == "Ohm's law"


@pytest.mark.parametrize("name", sorted(CALCULATORS))
def test_what_a_calculator_works_out_is_said_as_people_speak(name: str):
    """Not by the names its code has, and not broken off where the words for authors began."""
    said = re.search(r"<p>([^<]+)</p>", SECTIONS[name])
    assert said
    assert not re.search(r"[a-z]_[a-z]|needs nothing|(?:^|\W)(?:and|or|as|with)\.$", said[1])
