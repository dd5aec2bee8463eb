"""Panels without a browser: their tables, their bounds, what they say of limits, what they never say."""

import datetime as dt
import html
import json
import math
import re

import pytest

from clampstand.build import handbook
from clampstand.calculators import CALCULATORS
from clampstand.calculators.sheet import work_out
from clampstand.calculators.worked import CannotWork
from clampstand.physics import dose, electricity
from clampstand.rendering.assets import assets
from clampstand.rendering.live.asking import asked_near, asked_room, limits_of
from clampstand.rendering.live.catalogue import PANELS, panels_of
from clampstand.rendering.live.panel import Panel, Result
from clampstand.rendering.live.parts import Asked, AskedDay, Fixed, Of, Read, Since, over
from clampstand.rendering.live.totals import SIZES, totals_of
from clampstand.rendering.templating import environment
from clampstand.units import OutOfRange, number_in, q, quantity, read_amount
from demo import demo
from rendering.live.trials import demo_panels

BOOK = demo().book
PANELS_OF_DEMO = demo_panels()


def page_of(panel: Panel) -> str:
    template = environment().get_template("parts/live/live.jinja").module
    return str(template.panel(panel, BOOK.department.computed_for))


def test_every_maker_makes_a_panel_of_the_demo():
    made = {panel.id.split("/")[0] for panel in PANELS_OF_DEMO.values()}
    assert made >= {"activity-today", "dose-rate-at", "dose-of-a-stay", "carbon-dioxide-in-room"}
    assert made >= {"series-current", "stored", "fringe-spacing", "temperature-rise", "saturation-current"}
    assert len(made) >= len(PANELS)


@pytest.mark.parametrize("name", sorted(PANELS_OF_DEMO))
def test_a_table_stands_beside_every_panel_and_says_what_it_holds_for(name: str):
    panel = PANELS_OF_DEMO[name]
    page = html.unescape(page_of(panel))
    assert len(panel.rows) >= 3
    for row in panel.rows:
        assert row.varied in page
        assert all(text in page for text, _ in row.cells)
    assert all(words in page for words in panel.others)
    assert "15\u00a0January\u00a02026" in page
    assert re.search(r"<form[^>]* hidden>", page)
    assert not re.search(r"nan|inf\b|allowed|permitted|\bsafe\b", page.lower().replace("safety", ""))


@pytest.mark.parametrize("name", sorted(PANELS_OF_DEMO))
def test_a_panel_begins_with_the_number_the_page_prints(name: str):
    """Where the page works out the same value of the same kind, both are written alike."""
    panel, practical = PANELS_OF_DEMO[name], BOOK.practicals[name.split(": ", maxsplit=1)[0]]
    results = [found for _, found in work_out(practical, BOOK, CALCULATORS).numbers]
    worked = [number for found in results if not isinstance(found, CannotWork) for number in found]
    for result in panel.results:
        value = result.quantity(panel.start)
        alike = [
            number.shown
            for number in worked
            if number.kind == result.kind
            and math.isclose(number_in(number.value, value.units), value.magnitude, rel_tol=1e-9)
        ]
        assert set(alike) <= {result.printed(value)}, (result.title, alike)


def test_a_limit_is_said_only_of_a_number_that_breaks_it():
    panel = next(p for name, p in PANELS_OF_DEMO.items() if name.startswith("cloud-chamber: carbon"))
    shut = panel.results[0]
    assert shut.broken(shut.quantity(panel.start | {"mass": 0.1})) == ()
    words = shut.broken(shut.quantity(panel.start | {"mass": 10.0}))
    assert words[0].startswith("over the limit of at most 5000 ppm averaged over 8 h (law, unverified)")
    assert len(words) == 2


def test_a_distance_nearer_than_its_limit_is_marked():
    panel = PANELS_OF_DEMO["handling-a-sealed-source: dose-rate-at/S-G2"]
    asked = panel.asked[0]
    assert isinstance(asked, Asked)
    assert asked.breaks(50)
    assert not asked.breaks(100)
    assert panel.rows[0].varied.endswith("*")
    assert any(words.startswith("under the limit of at least 100 mm (local rule)") for words in panel.beyond)


def test_a_room_never_has_more_air_changes_than_the_practical_counts_on():
    counted_on = q("2 per hour")
    options = asked_room(BOOK, "R1", counted_on).options
    assert options
    assert all(option.numbers["air changes"] <= counted_on for option in options)
    assert all(o.numbers["air changes"] == q("0 per hour") for o in asked_room(BOOK, "R1", None).options)
    assert "covered yard" not in " ".join(option.words for option in options)


def test_a_panel_with_a_corner_where_its_formula_fails_is_refused():
    distance = Asked("distance", "Distance", "length", "mm", 100, 0, 1000, 10)
    rate = Of(
        dose.ambient_dose_rate,
        constant=Fixed(quantity(80, "uSv*m**2/(GBq*h)")),
        activity=Fixed(q("185 kBq")),
        distance=Read(distance),
    )
    panel = Panel("x", "X", (distance,), (Result("Rate", rate, "dose rate"),), (distance, (100.0,)))
    with pytest.raises(OutOfRange, match="Rate has no value"):
        panel.proved()


def test_days_are_counted_from_the_reference_date():
    day = AskedDay("day", "Day", dt.date(2026, 1, 15), dt.date(1998, 3, 16), dt.date(2046, 1, 15))
    since = Since(day, dt.date(1998, 3, 16))
    assert since.number("s", {"day": day.start}) == 10167 * 86400  # counted on a calendar
    assert since.data("s") == {"read": "day", "less": 10301, "times": 86400.0}
    assert day.said(day.start) == "15\u00a0January\u00a02026"


def test_an_argument_left_out_must_be_a_constant_of_the_formula():
    with pytest.raises(TypeError, match="voltage is given nothing"):
        Of(electricity.charge_stored, capacitance=Fixed(q("10 nF")))


def test_nothing_near_nought_can_be_tried():
    with pytest.raises(CannotWork):
        asked_near("x", "X", read_amount("0 m"))


def test_limits_without_a_quantity_are_left_out():
    assert limits_of(BOOK, "radiation.sources-out", "planning.review-interval") == ()
    assert [over(limit).split(" (")[0] for limit in limits_of(BOOK, "radiation.time-out")] == [
        "over the limit of at most 20 min"
    ]


def test_what_cannot_be_worked_out_has_no_panel(tiny_content):
    book = handbook(tiny_content()).reading.book
    assert book is not None
    without = next(iter(book.practicals.values()))
    assert all(isinstance(panel, Panel) for panel in panels_of(without, book))


def test_the_data_of_a_panel_is_plain_json_and_names_no_script():
    for panel in PANELS_OF_DEMO.values():
        data = json.loads(panel.json)
        assert set(data) == {"inputs", "results"}
        assert panel.json == panel.json.strip()
        assert "<" not in page_of(panel).split('data-live="')[1].split('"')[0]


def test_kit_totals_of_every_size_are_those_of_the_kit_list():
    totals = totals_of(BOOK.practicals["cloud-chamber"], BOOK)
    assert totals is not None
    chamber = totals.names.index("cloud chamber")
    assert [totals.texts[size][chamber] for size in (1, 5, 6, 30, 31)] == ["1", "1", "2", "6", "7"]
    ice = totals.names.index("dry ice")
    assert totals.texts[30][ice] == "2.4\u00a0kg"
    assert len(json.loads(totals.json)) == len(SIZES)


def test_a_practical_for_the_whole_class_has_no_other_sizes():
    assert totals_of(BOOK.practicals["spark-counter"], BOOK) is None


def test_the_script_is_one_classic_file_named_by_its_content():
    script = [address for address in assets().scripts if "/live." in address]
    assert len(script) == 1
    text = assets().files[script[0]].decode()
    assert re.fullmatch(r"assets/clampstand/live\.[0-9a-f]{10}\.js", script[0])
    assert not re.search(r"\beval\b|new Function|innerHTML|insertAdjacent|import |export |https?:", text)
