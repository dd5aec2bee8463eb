"""Cards on paper: two sides on A4 and on Letter, nothing cut, nothing small, and the same from a stick.

Every card is opened once, and all that is asked of it is gathered there; each test then asks one thing.
"""

import shutil
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

from browser.barriers import barriers
from clampstand.rendering.assets import ASSETS
from clampstand.rendering.cards import cards
from demo import CONTENT, demo_contents

pytestmark = pytest.mark.browser

MM = 25.4 / 96  # a CSS pixel
SIDE_HEIGHT = 257  # mm that A4 and Letter both leave inside the margins
LONGEST_LINE = 80  # characters: WCAG 1.4.8 and RNIB's upper bound
PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 844}
PAPERS = {"A4": True, "Letter": False}
"""What people print on, and whether they print backgrounds."""
FOLDERS = {
    "practicals": ("cards", "cards/wall"),
    "skills": ("cards/skill",),
    "emergencies": ("cards/emergency",),
}
"""Where the cards of a kind of definition are; not every practical has a sheet for the wall."""
DEFINITIONS = [
    f"{shelf}/{file.stem}" for shelf in FOLDERS for file in sorted((CONTENT / shelf).glob("*.yml"))
]

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
  element => parseFloat(getComputedStyle(element).fontSize) * 72 / 96)"""

LACKING = """weights => weights.filter(
  weight => !document.fonts.check(`${weight} 12px 'Clampstand Sans'`, document.body.innerText))"""

WIDER = "document.documentElement.scrollWidth > window.innerWidth"

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
    made = tmp_path_factory.mktemp("cards")
    shutil.copytree(ASSETS / "fonts", made / "assets" / "clampstand" / "fonts")
    for card in cards(demo_contents()):
        place = made / card.page.uri
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(card.page.html, encoding="utf-8")
    return made


@dataclass(frozen=True)
class Seen:
    """One card as it was found.

    Args:
        name: its address from the folder of cards on.
        sides: how many sides it is meant to have.
        barriers: what axe finds on a phone and on a desk.
        too_wide_for: the widths at which it must be scrolled sideways, in CSS pixels.
        heights: of each side, in mm.
        spilling: what reaches over the edge of its side.
        smallest: where text stands, and its smallest size there in points.
        step_sizes: the sizes of steps, warnings and actions, in points.
        longest: the longest line.
        lacking: the weights of our font that lack a sign.
        printed: paper, and how many sides come out on it.
        words: what the printed sheet says, without spaces, in small letters.
        steps: what the page says of each step, warning and action.
        asked: every address it asked for.
        said: what it told the console.
    """

    name: str
    sides: int
    barriers: list[str]
    too_wide_for: list[int]
    heights: list[float]
    spilling: list[str]
    smallest: dict[str, float]
    step_sizes: list[float]
    longest: str
    lacking: list[int]
    printed: dict[str, int]
    words: str
    steps: list[str]
    asked: list[str]
    said: list[str]


def look_at(page: Page, card: Path, folder: Path) -> Seen:
    """A card on two screens, then on paper."""
    asked: list[str] = []
    said: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto(card.as_uri())
    page.evaluate("document.fonts.ready")
    found, too_wide = [], []
    for size in (PHONE, DESK):
        found += barriers(page, [size])
        too_wide += [size["width"]] if page.evaluate(WIDER) else []
    page.emulate_media(media="print")
    page.evaluate("document.fonts.ready")
    prints = {paper: _printed(page, paper) for paper in PAPERS}
    return Seen(
        name=card.relative_to(folder).as_posix(),
        sides=1 if card.parent.name in ("emergency", "wall") else 2,
        barriers=found,
        too_wide_for=too_wide,
        heights=[height * MM for height in page.evaluate(HEIGHTS)],
        spilling=page.evaluate(SPILLS),
        smallest=page.evaluate(SMALLEST),
        step_sizes=page.evaluate(STEP_SIZES),
        longest=page.evaluate(LONGEST),
        lacking=page.evaluate(LACKING, [400, 700]),
        printed={paper: len(pdf.pages) for paper, pdf in prints.items()},
        words=_joined("".join(sheet.extract_text() for sheet in prints["A4"].pages)),
        steps=page.evaluate(SEEN),
        asked=asked,
        said=said,
    )


def _printed(page: Page, paper: str) -> PdfReader:
    return PdfReader(BytesIO(page.pdf(format=paper, print_background=PAPERS[paper])))


def _joined(text: str) -> str:
    return "".join(text.split()).casefold()


def all_of(folder: Path, definition: str) -> list[Path]:
    """The cards of a definition, one or two."""
    shelf, its_id = definition.split("/")
    paths = [folder / inner / f"{its_id}.html" for inner in FOLDERS[shelf]]
    return [path for path in paths if path.is_file()]


@pytest.fixture(scope="module", params=DEFINITIONS)
def seen(request: pytest.FixtureRequest, browser: Browser, folder: Path) -> list[Seen]:
    """The cards of one definition; pytest asks everything of one before it looks at the next."""
    found = []
    for card in all_of(folder, request.param):
        page = browser.new_page()
        found.append(look_at(page, card, folder))
        page.close()
    assert found
    return found


def test_every_card_is_looked_at(folder: Path) -> None:
    looked_at = {card for definition in DEFINITIONS for card in all_of(folder, definition)}
    assert looked_at == set((folder / "cards").rglob("*.html"))


def test_every_side_fits_what_both_papers_leave(seen: list[Seen]) -> None:
    for card in seen:
        assert len(card.heights) == card.sides, card.name
        too_long = [
            f"side {n}: {height - SIDE_HEIGHT:.1f} mm too long"
            for n, height in enumerate(card.heights, start=1)
            if height > SIDE_HEIGHT
        ]
        assert too_long == [], card.name


def test_it_prints_on_one_sheet(seen: list[Seen]) -> None:
    for card in seen:
        assert card.printed == dict.fromkeys(PAPERS, card.sides), card.name


def test_nothing_spills_over_the_edge(seen: list[Seen]) -> None:
    for card in seen:
        assert card.spilling == [], card.name


def test_the_print_holds_every_step_whole(seen: list[Seen]) -> None:
    """What the printed sheet's own text says, against the page: nothing is clipped or painted over."""
    for card in seen:
        for step in card.steps:
            assert _joined(step)[-30:] in card.words, (card.name, step)


def test_type_is_large_enough(seen: list[Seen]) -> None:
    for card in seen:
        assert card.smallest["anything"] >= 9 - 0.01, card.name
        assert card.smallest.get("done or said", 99) >= 11.5 - 0.01, card.name
        assert all(size >= 12 - 0.01 for size in card.step_sizes), card.name


def test_lines_are_short_enough_to_read(seen: list[Seen]) -> None:
    for card in seen:
        assert 0 < len(card.longest) <= LONGEST_LINE, (card.name, len(card.longest), card.longest)


def test_the_font_is_our_own_and_has_every_sign(seen: list[Seen]) -> None:
    for card in seen:
        assert card.lacking == [], card.name


def test_it_asks_nobody_for_anything(seen: list[Seen], folder: Path) -> None:
    for card in seen:
        assert card.asked, card.name
        assert [url for url in card.asked if not url.startswith(folder.as_uri())] == [], card.name
        assert card.said == [], card.name


def test_axe_finds_nothing(seen: list[Seen]) -> None:
    for card in seen:
        assert card.barriers == [], card.name
        assert card.too_wide_for == [], card.name


def test_boxes_can_be_ticked_by_keyboard(browser: Browser, folder: Path) -> None:
    page = browser.new_page()
    page.goto(all_of(folder, DEFINITIONS[0])[0].as_uri())
    box = page.locator(".tick input").first
    box.focus()
    page.keyboard.press("Space")
    assert box.is_checked()
    page.close()
