"""A path sheet is printed on one side of either paper."""

from io import BytesIO
from pathlib import Path

import pytest
from playwright.sync_api import Browser
from pypdf import PdfReader

pytestmark = pytest.mark.browser


def test_every_sheet_is_one_side(browser: Browser, site: Path) -> None:
    page = browser.new_page()
    sides = {}
    for sheet in sorted((site / "paths").glob("*.html")):
        page.goto(sheet.as_uri())
        for paper in ("A4", "Letter"):
            sides[sheet.stem, paper] = len(PdfReader(BytesIO(page.pdf(format=paper))).pages)
    page.close()
    assert len(sides) > 40
    assert {sheet for sheet, number in sides.items() if number != 1} == set()
