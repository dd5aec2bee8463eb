"""The site in a browser, opened from a folder on a disk: search, access, the first screen.

A page of every type is opened once and all that is asked of every type is gathered there; each test then asks
one thing.
"""

import gzip
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from playwright.sync_api import Browser, FloatRect, Page, expect

from browser.barriers import barriers

pytestmark = pytest.mark.browser

PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 900}
SMALL_PHONE = {"width": 360, "height": 740}
SCHEMES = {"light": "default", "dark": "slate"}
"""What people set their machine to, and what the theme calls it."""
SIZES = (SMALL_PHONE, PHONE, DESK)
"""Where axe judges a page, in either scheme of colours."""
HELP = ".emergency-tab a"
PATIENCE = 120_000
"""Milliseconds until a page that does not come to rest counts as broken: a crowded machine is slow."""
MOST_AT_FIRST = 150_000
"""Bytes of a first visit, compressed as a web server sends them: page, style, scripts and fonts."""
MOST_TO_SEARCH = 60_000
"""Bytes of the words that search knows, fetched in the background."""
PAGE_TYPES = (
    "index",
    "first-lesson",
    "practicals/index",
    "practicals/spark-counter",
    "prep/spark-counter",
    "emergencies/index",
    "emergencies/dropped-source",
    "skills/index",
    "skills/eht-supply",
    "paths/source-store-and-wipe-test",
    "sources/index",
    "kit/index",
    "limits/index",
    "rules/index",
    "rules/source-returned",
    "citations/index",
    "due/index",
    "days/index",
    "days/2026-01-15",
    "cards",
    "glossary/index",
)


class Visit:
    """A page open in the browser, with everything it complained of and everything it asked for elsewhere."""

    def __init__(self, page: Page, site: Path) -> None:
        self.page = page
        self.site = site
        self.complaints: list[str] = []
        self.outside: list[str] = []
        page.on("console", lambda said: said.type == "error" and self.complaints.append(said.text))
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.on("request", lambda asked: self._note(asked.url))

    def _note(self, url: str) -> None:
        if not url.startswith(("file:", "data:", "blob:", "about:")):
            self.outside.append(url)

    def open(self, name: str) -> Page:
        self.page.goto(f"{(self.site / name).as_uri()}.html", timeout=PATIENCE)
        self.page.wait_for_load_state("networkidle", timeout=PATIENCE)
        return self.page

    def search(self, words: str) -> list[str]:
        """The addresses of what search finds, best first."""
        self.open("index")
        self.page.locator("label[for=__search]").first.click()
        self.page.locator("input[name=query]").press_sequentially(words)
        found = self.page.locator(".md-search-result__link")
        found.first.wait_for(timeout=10_000)
        self.page.wait_for_timeout(500)  # the list is made anew while one types
        hrefs: list[str] = found.evaluate_all("links => links.map(link => link.href)")
        return [href.split("?")[0] for href in hrefs]


@pytest.fixture
def visit(browser: Browser, site: Path) -> Iterator[Visit]:
    context = browser.new_context(viewport=PHONE, offline=True)
    yield Visit(context.new_page(), site)
    context.close()


@pytest.mark.parametrize(
    ("words", "page"),
    [
        ("clicky thing", "practicals/spark-counter"),
        ("dusty", "practicals/spark-counter"),
        ("dusty spark counter", "practicals/spark-counter"),
        ("5 mA", "practicals/ionisation-current"),
        ("EHT supply sparks", "practicals/spark-counter"),
        ("EHT", "skills/eht-supply"),
        ("balloon radon", "practicals/radon-progeny-on-a-balloon"),
        ("dry ice gloves", "practicals/cloud-chamber"),
        ("dropped on the floor", "emergencies/dropped-source"),
    ],
)
def test_search_finds_a_page_by_the_words_people_type(visit: Visit, words: str, page: str):
    first_three = visit.search(words)[:3]
    assert any(address.endswith(f"/{page}.html") for address in first_three), first_three
    assert not visit.complaints
    assert not visit.outside


@dataclass(frozen=True)
class Seen:
    """A page of one type as it was found.

    Args:
        complaints: what it complained of when it was opened.
        outside: what it asked another host for.
        widths: width of a phone, and how wide the page is there, in CSS pixels.
        help_box: where the way to help is after scrolling to the end; None where it is nowhere.
        help_leads_to: the address one tap on it leads to.
        barriers: scheme of colours, and what axe finds in it with everything unfolded.
    """

    complaints: list[str]
    outside: list[str]
    widths: dict[int, int]
    help_box: FloatRect | None
    help_leads_to: str
    barriers: dict[str, list[str]]


def look_at(visits: dict[str, Visit], name: str) -> Seen:
    """A page in light and in dark colours, on phones and on a desk."""
    pages = {scheme: visit.open(name) for scheme, visit in visits.items()}
    page, found, widths = pages["light"], {}, {}
    complaints, outside = ([*visits["light"].complaints], [*visits["light"].outside])
    page.evaluate("window.scrollTo(0, document.body.scrollHeight)")
    help_box = page.locator(HELP).bounding_box() if page.locator(HELP).count() else None
    for size in (SMALL_PHONE, PHONE):
        page.set_viewport_size(size)
        widths[size["width"]] = page.evaluate("document.documentElement.scrollWidth")
    for scheme, its in pages.items():
        assert its.locator("body").get_attribute("data-md-color-scheme") == SCHEMES[scheme]
        its.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true })")
        found[scheme] = barriers(its, SIZES)
    page.set_viewport_size(PHONE)
    if help_box is not None:
        with page.expect_navigation():
            page.locator(HELP).click()
    return Seen(complaints, outside, widths, help_box, page.url, found)


@pytest.fixture(scope="module", params=PAGE_TYPES)
def seen(request: pytest.FixtureRequest, browser: Browser, site: Path) -> Seen:
    """A page of one type; pytest asks everything of one before it looks at the next."""
    contexts = {
        scheme: browser.new_context(
            viewport=PHONE, offline=True, color_scheme=scheme, reduced_motion="reduce"
        )
        for scheme in SCHEMES
    }
    visits = {scheme: Visit(context.new_page(), site) for scheme, context in contexts.items()}
    found = look_at(visits, request.param)
    for context in contexts.values():
        context.close()
    return found


def test_pages_load_without_complaint_and_ask_nobody(seen: Seen):
    assert not seen.complaints
    assert not seen.outside


@pytest.mark.parametrize("scheme", SCHEMES)
def test_no_page_type_has_a_barrier_that_axe_knows(seen: Seen, scheme: str):
    assert seen.barriers[scheme] == []


def test_no_page_is_wider_than_a_phone(seen: Seen):
    assert seen.widths.keys() == {PHONE["width"], SMALL_PHONE["width"]}
    assert all(wide <= width for width, wide in seen.widths.items()), seen.widths


def test_help_is_one_tap_away_from_everywhere_on_a_page(seen: Seen):
    assert seen.help_box is not None
    assert 0 <= seen.help_box["y"] <= PHONE["height"] - seen.help_box["height"]
    assert seen.help_leads_to.endswith("/emergencies/index.html")


@pytest.mark.parametrize("name", ["index", "practicals/spark-counter"])
def test_a_first_visit_is_light(visit: Visit, name: str):
    asked: set[Path] = set()
    visit.page.on("request", lambda request: asked.add(_file_of(request.url)))
    visit.open(name)
    sizes = {file.name: _as_sent(file) for file in asked}
    assert 0 < sizes.pop("search_index.js") <= MOST_TO_SEARCH
    assert sum(sizes.values()) <= MOST_AT_FIRST, sizes


def _file_of(url: str) -> Path:
    return Path(unquote(urlsplit(url).path))


def _as_sent(file: Path) -> int:
    content = file.read_bytes()
    return len(content) if file.suffix in (".woff2", ".png") else len(gzip.compress(content))


def test_the_first_screen_of_a_practical_answers_what_a_nervous_teacher_asks(visit: Visit):
    page = visit.open("practicals/spark-counter")
    for part in (".aim", ".verdict", ".facts", ".key-number >> nth=2"):
        box = page.locator(part).first.bounding_box()
        assert box is not None, part
        assert box["y"] + box["height"] <= PHONE["height"], part
    assert page.locator(".key-number").count() == 3
    assert page.locator(".key-number .mark").count() == 3


def test_the_table_is_narrowed_and_the_address_keeps_it(visit: Visit):
    page = visit.open("practicals/index")
    everything = page.locator("#practicals-table tbody tr:visible").count()
    page.locator(".narrow summary").click()  # folded on a phone, so that the first rows are in sight
    page.locator("select[name=hazard]").select_option("electricity")
    narrowed = page.locator("#practicals-table tbody tr:visible").all_inner_texts()
    assert 0 < len(narrowed) < everything
    assert all("electricity" in row for row in narrowed)
    assert "hazard=electricity" in page.url
    page.reload()
    assert page.locator("#practicals-table tbody tr:visible").all_inner_texts() == narrowed
    page.get_by_role("button", name="Show all").click()
    expect(page).not_to_have_url(re.compile(r"\?"))
    assert page.locator("#practicals-table tbody tr:visible").count() == everything


def test_one_may_ask_for_no_source_and_hears_how_much_time_would_do(visit: Visit):
    page = visit.open("practicals/index")
    page.locator(".narrow summary").click()
    page.locator("select[name=source]").select_option("none")
    rows = page.locator("#practicals-table tbody tr:visible")
    titles = rows.locator("th").all_inner_texts()
    assert "Resistance of a wire" in titles
    assert "Spark counter" not in titles
    minutes = [int(cell.split()[0]) for cell in rows.locator("td:nth-child(6)").all_inner_texts()]
    page.locator("input[name=time]").fill(str(min(minutes) - 1))
    told = f"0 of 24; the shortest of the kind takes {min(minutes)} min"
    assert page.locator("form.narrow output").inner_text() == told


def test_without_javascript_the_whole_table_and_every_answer_can_be_read(browser: Browser, site: Path):
    context = browser.new_context(viewport=PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto((site / "practicals/index.html").as_uri())
    assert page.locator("form.narrow").is_hidden()
    assert page.locator("#practicals-table tbody tr:visible").count() >= 5
    page.goto((site / "practicals/spark-counter.html").as_uri())
    page.locator("details.answer summary").first.click()
    assert page.locator("details.answer p").first.is_visible()
    context.close()


def test_the_three_layers_are_told_apart_without_colour(visit: Visit):
    page = visit.open("limits/index")
    style = "one => (s => [s.borderStyle, s.borderRadius, s.backgroundColor].join())(getComputedStyle(one))"
    looks = {
        kind: page.locator(f".mark--{kind}").first.evaluate(style)
        for kind in ("law", "guidance", "local-rule")
    }
    assert len(set(looks.values())) == 3, looks
    words = {kind: page.locator(f".mark--{kind}").first.inner_text().lower() for kind in looks}
    assert words == {"law": "law", "guidance": "guidance", "local-rule": "local rule"}


def test_the_code_on_a_card_leads_to_whether_it_is_in_force(visit: Visit, site: Path):
    page = visit.open("cards")
    current = page.locator(".cards-in-force tr[id]").first.get_attribute("id") or ""
    answers = {
        current: "In force.",
        f"{current[:5]}00000000": "Out of date.",
        "ffff-00000000": "Not a card of this handbook.",
        "<b>": "",
    }
    for card_id, answer in answers.items():
        page.goto("about:blank")
        page.goto(f"{(site / 'cards.html').as_uri()}#{card_id}")
        shown = " ".join(page.locator(".card-answers > :visible").all_inner_texts())
        assert shown.startswith(answer), card_id
        assert bool(shown) == bool(answer), card_id
    typed = {current.upper(): "In force.", current.replace("-", " "): "In force.", "of no card": "Not a card"}
    for card_id, answer in typed.items():
        page.goto("about:blank")
        page.goto((site / "cards.html").as_uri())
        page.locator("input[name=card]").fill(card_id)
        page.get_by_role("button", name="Look up").click()
        page.locator(f".card-answers > :visible:has-text('{answer}')").wait_for()
    assert not visit.complaints


def test_without_javascript_the_line_of_a_card_in_force_is_marked(browser: Browser, site: Path):
    context = browser.new_context(viewport=PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto((site / "cards.html").as_uri())
    current = page.locator(".cards-in-force tr[id]").nth(2).get_attribute("id")
    assert page.locator(".card-here--found:visible").count() == 0
    page.goto("about:blank")
    page.goto(f"{(site / 'cards.html').as_uri()}#{current}")
    marked = page.locator(".card-here--found:visible")
    assert marked.count() == 1
    assert marked.locator("xpath=ancestor::tr").get_attribute("id") == current
    context.close()
