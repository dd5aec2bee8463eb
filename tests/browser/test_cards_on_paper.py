"""Cards on paper: two sides on A4 and on Letter, nothing cut, nothing small, and the same from a stick."""

import shutil
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

from clampstand.build import sheets
from clampstand.checks.engine import lessons_of
from clampstand.reading import read
from clampstand.rendering.assets import ASSETS
from clampstand.rendering.cards import cards
from clampstand.rendering.contents import Contents

pytestmark = pytest.mark.browser

CONTENT = Path(__file__).parents[2] / "content"
MM = 25.4 / 96  # a CSS pixel
SIDE_HEIGHT = 257  # mm that A4 and Letter both leave inside the margins
LONGEST_LINE = 80  # characters: WCAG 1.4.8 and RNIB's upper bound
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]

HEIGHTS = """() => [...document.querySelectorAll('.side')].map(side => {
  side.style.minHeight = '0';
  const height = side.getBoundingClientRect().height;
  side.style.minHeight = '';
  return height;
})"""

SPILLS = """() => [...document.querySelectorAll('.side *:not(.unseen, .unseen *)')].filter(element => {
  const box = element.getBoundingClientRect(), side = element.closest('.side').getBoundingClientRect();
  const over = Math.max(box.right - side.right, side.left - box.left, box.bottom - side.bottom);
  return box.width && over > 1;
}).map(element => element.outerHTML.slice(0, 120))"""

SMALLEST = """() => {
  const found = {};
  const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const text = walk.currentNode, parent = text.parentElement;
    if (!text.data.trim() || parent.closest('svg, .unseen')) continue;
    const place = parent.closest('.step__do, .warn, .actions__do, .say') ? 'done or said' : 'anything';
    const size = parseFloat(getComputedStyle(parent).fontSize) * 72 / 96;
    if (!parent.closest('.step__clock')) found[place] = Math.min(found[place] ?? 99, size);
  }
  return found;
}"""

SEEN = """() => [...document.querySelectorAll('.step__do, .actions__do, .warn')].map(element => {
  const copy = element.cloneNode(true);
  copy.querySelectorAll('.unseen').forEach(hidden => hidden.remove());
  return copy.textContent;
})"""

STEP_SIZES = """() => [...document.querySelectorAll('.step__do, .warn, .actions__do')].map(
  element => parseFloat(getComputedStyle(element).fontSize))"""

LONGEST = """() => {
  let longest = '';
  for (const block of document.querySelectorAll('p, dd, li, .step__do, .warn, .telephone__calls')) {
    if (block.closest('.foot, .banner, .unseen')) continue;
    const lines = new Map(), range = document.createRange();
    const walk = document.createTreeWalker(block, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const text = walk.currentNode;
      if (text.parentElement.closest('p, dd, li, .step__do, .warn, .telephone__calls') !== block) continue;
      if (text.parentElement.closest('.unseen')) continue;
      for (let i = 0; i < text.length; i++) {
        range.setStart(text, i); range.setEnd(text, i + 1);
        const box = range.getClientRects()[0];
        if (!box || !box.width) continue;
        const key = Math.round(box.bottom / 6);
        lines.set(key, (lines.get(key) ?? '') + text.data[i]);
      }
    }
    for (const line of lines.values()) if (line.trim().length > longest.length) longest = line.trim();
  }
  return longest;
}"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The cards of the demo department as files, with the fonts they name."""
    book = read(CONTENT).book
    assert book is not None
    made = tmp_path_factory.mktemp("cards")
    shutil.copytree(ASSETS / "fonts", made / "assets" / "clampstand" / "fonts")
    for card in cards(Contents(book, sheets(lessons_of(book)))):
        place = made / card.page.uri
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(card.page.html, encoding="utf-8")
    return made


@pytest.fixture(scope="module")
def page(browser: Browser) -> Iterator[Page]:
    opened = browser.new_page()
    yield opened
    opened.close()


def on_paper(page: Page, card: Path) -> None:
    page.goto(card.as_uri())
    page.emulate_media(media="print")
    page.evaluate("document.fonts.ready")


def all_of(folder: Path) -> list[Path]:
    found = sorted((folder / "cards").rglob("*.html"))
    assert found
    return found


def sides_of(card: Path) -> int:
    return 1 if card.parent.name in ("emergency", "wall") else 2


def test_every_side_fits_what_both_papers_leave(page: Page, folder: Path) -> None:
    too_long = []
    for card in all_of(folder):
        on_paper(page, card)
        heights = [height * MM for height in page.evaluate(HEIGHTS)]
        assert len(heights) == sides_of(card)
        too_long += [
            f"{card.name}, side {n}: {height - SIDE_HEIGHT:.1f} mm too long"
            for n, height in enumerate(heights, start=1)
            if height > SIDE_HEIGHT
        ]
    assert too_long == []


@pytest.mark.parametrize(("paper", "backgrounds"), [("A4", True), ("Letter", False)])
def test_it_prints_on_one_sheet(page: Page, folder: Path, paper: str, backgrounds: bool) -> None:
    for card in all_of(folder):
        on_paper(page, card)
        printed = PdfReader(BytesIO(page.pdf(format=paper, print_background=backgrounds)))
        assert len(printed.pages) == sides_of(card), card.name


def test_nothing_spills_over_the_edge(page: Page, folder: Path) -> None:
    for card in all_of(folder):
        on_paper(page, card)
        assert page.evaluate(SPILLS) == [], card.name


def test_the_print_holds_every_step_whole(page: Page, folder: Path) -> None:
    """What the printed sheet's own text says, against the page: nothing is clipped or painted over."""
    for card in all_of(folder):
        on_paper(page, card)
        printed = PdfReader(BytesIO(page.pdf(format="A4")))
        words = "".join("".join(sheet.extract_text() for sheet in printed.pages).split())
        for step in page.evaluate(SEEN):
            assert "".join(step.split())[-30:].casefold() in words.casefold(), (card.name, step)


def test_type_is_large_enough(page: Page, folder: Path) -> None:
    for card in all_of(folder):
        on_paper(page, card)
        sizes = page.evaluate(SMALLEST)
        assert sizes["anything"] >= 9 - 0.01, card.name
        assert sizes.get("done or said", 99) >= 11.5 - 0.01, card.name
        assert all(size * 72 / 96 >= 12 - 0.01 for size in page.evaluate(STEP_SIZES)), card.name


def test_lines_are_short_enough_to_read(page: Page, folder: Path) -> None:
    for card in all_of(folder):
        on_paper(page, card)
        longest = page.evaluate(LONGEST)
        assert 0 < len(longest) <= LONGEST_LINE, (card.name, len(longest), longest)


def test_the_font_is_our_own_and_has_every_sign(page: Page, folder: Path) -> None:
    for card in all_of(folder):
        on_paper(page, card)
        for weight in (400, 700):
            has = f"() => document.fonts.check(`{weight} 12px 'Clampstand Sans'`, document.body.innerText)"
            assert page.evaluate(has), (card.name, weight)


def test_it_asks_nobody_for_anything(browser: Browser, folder: Path) -> None:
    opened = browser.new_page()
    asked: list[str] = []
    said: list[str] = []
    opened.on("request", lambda request: asked.append(request.url))
    opened.on("console", lambda message: said.append(message.text))
    opened.on("pageerror", lambda error: said.append(str(error)))
    for card in all_of(folder):
        opened.goto(card.as_uri())
        opened.evaluate("document.fonts.ready")
    opened.close()
    assert [url for url in asked if not url.startswith(folder.as_uri())] == []
    assert said == []


@pytest.mark.parametrize("width", [390, 1280])
def test_axe_finds_nothing(browser: Browser, folder: Path, width: int) -> None:
    opened = browser.new_page(viewport={"width": width, "height": 844})
    for card in all_of(folder):
        opened.goto(card.as_uri())
        found = Axe().run(opened, options={"runOnly": RULES}).response["violations"]
        assert [(v["id"], [n["html"][:120] for n in v["nodes"]][:3]) for v in found] == [], card.name
        assert opened.evaluate("document.documentElement.scrollWidth <= window.innerWidth"), card.name
    opened.close()


def test_boxes_can_be_ticked_by_keyboard(page: Page, folder: Path) -> None:
    page.goto(all_of(folder)[0].as_uri())
    page.emulate_media(media="screen")
    box = page.locator(".tick input").first
    box.focus()
    page.keyboard.press("Space")
    assert box.is_checked()
