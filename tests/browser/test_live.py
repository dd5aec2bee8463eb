"""Live panels in a browser: agreement with Python, bounds, words, and no script but the site's own."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from clampstand.rendering.assets import assets
from clampstand.rendering.live.panel import Panel
from clampstand.rendering.live.totals import totals_of
from clampstand.rendering.templating import environment
from demo import demo
from rendering.live.trials import (
    TOLERANCE,
    demo_panels,
    everything,
    expected,
    furthest_apart,
    script_with,
)

pytestmark = pytest.mark.browser

BOOK = demo().book
PANELS = demo_panels()
POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'"
HOST = "http://handbook.test"


def document(inside: str, root: str) -> str:
    script = next(address for address in assets().scripts if "/live." in address)
    return (
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>Panels</title>'
        f'<link rel="stylesheet" href="{root}{assets().stylesheet}">'
        f'<body class="md-typeset">{inside}<script src="{root}{script}"></script>'
    )


def html_of(*panels: Panel) -> str:
    macros = environment().get_template("parts/live/live.jinja").module
    return "".join(str(macros.panel(panel, BOOK.department.computed_for)) for panel in panels)


class Desk:
    """A page with panels, served under a strict policy, and what it complained of."""

    def __init__(self, page: Page) -> None:
        self.page, self.complaints = page, []
        page.on("console", lambda said: said.type == "error" and self.complaints.append(said.text))
        page.on("pageerror", lambda error: self.complaints.append(str(error)))

    def show(self, inside: str) -> Page:
        def answer(route) -> None:
            address = route.request.url.removeprefix(HOST + "/")
            if address in assets().files:
                kind = {"js": "text/javascript", "css": "text/css"}.get(
                    address.rpartition(".")[2], "font/woff2"
                )
                route.fulfill(body=assets().files[address], content_type=kind)
            else:
                headers = {"content-security-policy": POLICY, "content-type": "text/html"}
                route.fulfill(body=document(inside, "/"), headers=headers)

        self.page.route(f"{HOST}/**", answer)
        self.page.goto(f"{HOST}/page.html")
        self.page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true })")
        return self.page


@pytest.fixture
def desk(browser: Browser) -> Iterator[Desk]:
    context = browser.new_context(timezone_id="Pacific/Auckland")
    made = Desk(context.new_page())
    yield made
    assert not made.complaints
    context.close()


def test_chromium_agrees_on_a_thousand_inputs_for_every_formula_and_on_every_panel(
    browser: Browser, tmp_path: Path
):
    script = tmp_path / "tried.js"
    script.write_text(script_with("window.tryAll = tryAll;"), "utf-8")
    page = browser.new_page()
    page.goto("about:blank")
    page.add_script_tag(path=script)
    made = page.evaluate("trials => window.tryAll(trials)", everything())
    page.close()
    apart = furthest_apart(made, expected())
    assert {name: by for name, by in apart.items() if by > TOLERANCE} == {}


def test_every_panel_of_the_demo_begins_where_its_table_would(desk: Desk):
    page = desk.show(html_of(*PANELS.values()))
    shown = [output.text_content() for output in page.locator("output").all()]
    wanted = [r.printed(r.quantity(panel.start)) for panel in PANELS.values() for r in panel.results]
    assert shown == wanted


def test_a_changed_input_changes_the_number_and_says_what_it_is_for(desk: Desk):
    page = desk.show(html_of(PANELS["handling-a-sealed-source: dose-rate-at/S-G2"]))
    assert page.locator("output").inner_text() == "2.9\u00a0µSv/h"
    page.locator("[name=distance]").fill("200")
    assert page.locator("output").inner_text() == "710\u00a0nSv/h"  # a quarter of 2.83, up
    assert page.locator(".live__for").inner_text() == "For distance 200\u00a0mm; day 2026-01-15."
    page.locator("[name=day]").fill("2030-01-15")
    assert page.locator(".live__for").inner_text() == "For distance 200\u00a0mm; day 2030-01-15."
    page.get_by_role("button", name="As on this page").click()
    expect(page.locator("output").first).to_have_text(re.compile(r"^2\.9"))


def test_a_number_beyond_a_limit_says_whose_and_one_within_says_nothing(desk: Desk):
    page = desk.show(html_of(PANELS["handling-a-sealed-source: dose-rate-at/S-G2"]))
    assert page.locator(".live__over").count() == 0
    page.locator("[name=distance]").fill("50")
    words = page.locator(".live__over").inner_text()
    assert words.startswith("Distance: under the limit of at least 100 mm (local rule)")
    page.locator("[name=distance]").fill("100")
    assert page.locator(".live__over").count() == 0
    assert "allowed" not in page.locator("body").inner_text()


@pytest.mark.parametrize("typed", ["", "5", "-100", "1e400", "99999999"])
def test_what_is_out_of_bounds_gives_words_and_no_number(desk: Desk, typed: str):
    page = desk.show(html_of(PANELS["handling-a-sealed-source: dose-rate-at/S-G2"]))
    page.locator("[name=distance]").fill(typed)
    assert page.locator("output").inner_text() == "no number"
    words = page.locator(".live__wrong").inner_text()
    assert words == "Distance must be between 10\u00a0mm and 10000\u00a0mm."
    assert page.locator("[name=distance]").get_attribute("aria-invalid") == "true"
    assert page.locator(".live__for").count() == 0


def test_a_day_before_the_reference_date_gives_words(desk: Desk):
    page = desk.show(html_of(PANELS["handling-a-sealed-source: activity-today/S-G2"]))
    page.locator("[name=day]").fill("2001-01-01")
    assert "must be between 2\u00a0October\u00a02017 and" in page.locator(".live__wrong").inner_text()


def test_another_room_counts_with_its_own_volume_and_air(desk: Desk):
    panel = PANELS["cloud-chamber: carbon-dioxide-in-room/run"]
    page = desk.show(html_of(panel))
    room = panel.asked[1]
    for place, option in enumerate(room.options):
        page.locator("[name=room]").select_option(index=place)
        shown = [output.text_content() for output in page.locator("output").all()]
        inputs = panel.start | {"room": place}
        assert shown == [r.printed(r.quantity(inputs)) for r in panel.results], option.words


def test_the_kit_of_a_class_of_another_size_is_looked_up(desk: Desk):
    totals = totals_of(BOOK.practicals["cloud-chamber"], BOOK)
    assert totals is not None
    page = desk.show(str(environment().get_template("parts/live/live.jinja").module.other_sizes(totals)))
    assert tuple(one.text_content() for one in page.locator("output").all()) == totals.texts[30]
    page.locator("[name=class]").select_option("31")
    assert tuple(one.text_content() for one in page.locator("output").all()) == totals.texts[31]


@pytest.mark.parametrize("script", [True, False], ids=["with script", "without script"])
def test_from_a_folder_the_form_is_there_only_where_it_works(browser: Browser, tmp_path: Path, script: bool):
    for address, content in assets().files.items():
        (tmp_path / address).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / address).write_bytes(content)
    panel = PANELS["handling-a-sealed-source: dose-rate-at/S-G2"]
    inside = html_of(panel).replace("<details ", "<details open ")
    (tmp_path / "page.html").write_text(document(inside, ""), "utf-8")
    context = browser.new_context(java_script_enabled=script)
    page = context.new_page()
    page.goto((tmp_path / "page.html").as_uri())
    assert page.locator("form").is_visible() is script
    assert page.get_by_role("cell", name="12\u00a0µSv/h").is_visible()
    context.close()


def test_on_paper_there_are_tables_without_forms(browser: Browser, desk: Desk):
    page = desk.show(html_of(PANELS["handling-a-sealed-source: dose-rate-at/S-G2"]))
    page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = false })")
    page.emulate_media(media="print")
    assert not page.locator("form").is_visible()
    assert page.locator("table").is_visible()
    assert (
        page.locator("caption").inner_text()
        == "With day 15\u00a0January\u00a02026; worked out for 15\u00a0January\u00a02026"
    )
