"""The sheet with every part and its examples has no barrier, and nothing on it is wider than a telephone."""

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

import specimens

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def sheet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("specimens") / "parts.html"
    path.write_text(specimens.page(), encoding="utf-8")
    return path


@pytest.mark.parametrize("scheme", ["default", "slate"])
def test_no_part_has_a_barrier_and_none_is_too_wide(browser: Browser, sheet: Path, scheme: str) -> None:
    """A page's frame is the theme's, and what is shown twice has its name twice: neither is judged here."""
    page = browser.new_page(viewport={"width": 360, "height": 800})
    page.goto(sheet.as_uri())
    page.evaluate("scheme => document.body.setAttribute('data-md-color-scheme', scheme)", scheme)
    apart = ("region", "landmark-unique", "duplicate-id-aria")
    framed = {rule: {"enabled": False} for rule in apart}
    found = Axe().run(page, options={"rules": framed, "resultTypes": ["violations"]}).response["violations"]
    assert [(broken["id"], node["html"]) for broken in found for node in broken["nodes"]] == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    page.close()
