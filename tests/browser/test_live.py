"""Live panels in a browser: agreement with Python, bounds, words, no script allowed but the site's own."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from rendering.live.trials import TOLERANCE, everything, expected, furthest_apart, script_with

pytestmark = pytest.mark.browser


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
