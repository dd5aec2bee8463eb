"""What was smuggled into a page does not run; what belongs to the site does, from a folder or a server."""

import functools
import shutil
import threading
from collections.abc import Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser

ROOT = Path(__file__).parents[2]
SITE = """\
site_name: Tests
docs_dir: content/pages
site_dir: site
use_directory_urls: false
theme: {name: material, font: false}
plugins: [clampstand, search, offline]
"""
SMUGGLED = """\
---
title: Smuggled <script>window.fromTitle = true</script>
---
# Smuggled

<script>window.fromPage = true</script>
<img src="nowhere.png" alt="" onerror="window.fromPicture = true">
<a id="link" href="javascript:window.fromLink = true">link</a>
<form id="form" action="elsewhere.html"><button>Send</button></form>

Nothing here.
{: onclick="window.fromWords = true" }
"""
MARKS = ("fromTitle", "fromPage", "fromPicture", "fromLink", "fromWords")
"""What each way in would set, if it ran."""
PAGES = (
    "index",
    "practicals/index",
    "practicals/handling-a-sealed-source",
    "prep/cloud-chamber",
    "emergencies/dropped-source",
    "skills/eht-supply",
    "days/index",
    "limits/index",
    "numbers/index",
    "cards/spark-counter",
)


class Quiet(SimpleHTTPRequestHandler):
    """Serves files and says nothing about it."""

    def log_message(self, *_: object) -> None: ...


@pytest.fixture(scope="module")
def served(site: Path) -> Iterator[str]:
    """The demo site on a server of this machine's own."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=str(site)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context()
    yield context.new_page()
    context.close()


def complaints_of(page: Page) -> list[str]:
    """A list that fills with what the page complains of."""
    heard: list[str] = []
    page.on("console", lambda said: heard.append(said.text) if said.type == "error" else None)
    page.on("pageerror", lambda error: heard.append(str(error)))
    return heard


@pytest.fixture(scope="module")
def smuggled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A page of the demo with every way in that Markdown leaves open."""
    tmp_path = tmp_path_factory.mktemp("smuggled")
    shutil.copytree(ROOT / "content", tmp_path / "content")
    (tmp_path / "content/pages/smuggled.md").write_text(SMUGGLED, encoding="utf-8")
    settings = SITE + "markdown_extensions: [attr_list]\n"
    (tmp_path / "mkdocs.yml").write_text(settings, encoding="utf-8")
    config = load_config(str(tmp_path / "mkdocs.yml"))
    config.plugins.on_startup(command="build", dirty=False)
    try:
        build(config)
    finally:
        config.plugins.on_shutdown()
    return tmp_path / "site" / "smuggled.html"


def marks_after_trying_everything(page: Page, address: str) -> list[str]:
    page.goto(address)
    page.wait_for_load_state("networkidle")
    page.locator("#link").click()
    page.get_by_text("Nothing here.").click()
    return [mark for mark in MARKS if page.evaluate(f"Boolean(window.{mark})")]


def test_nothing_smuggled_into_a_page_runs(page: Page, smuggled: Path):
    heard = complaints_of(page)
    assert marks_after_trying_everything(page, smuggled.as_uri()) == []
    assert any("Content Security Policy" in words for words in heard)


def test_without_the_policy_the_same_things_would_run(page: Page, smuggled: Path):
    text = smuggled.read_text(encoding="utf-8")
    bare = smuggled.with_name("bare.html")
    bare.write_text(text.replace("Content-Security-Policy", "nothing"), encoding="utf-8")
    found = marks_after_trying_everything(page, bare.as_uri())
    assert set(found) >= {"fromPage", "fromPicture", "fromLink", "fromWords"}


def test_a_form_smuggled_in_sends_nothing(page: Page, smuggled: Path):
    page.goto(smuggled.as_uri())
    page.evaluate("document.getElementById('form').submit()")
    page.wait_for_timeout(300)
    assert page.url.startswith(smuggled.as_uri())


@pytest.mark.parametrize("name", PAGES)
def test_a_page_has_a_policy_and_breaks_nothing_of_it(page: Page, site: Path, served: str, name: str):
    heard = complaints_of(page)
    for address in (f"{(site / name).as_uri()}.html", f"{served}/{name}.html"):
        page.goto(address)
        page.wait_for_load_state("networkidle")
        policy = page.locator("meta[http-equiv=Content-Security-Policy]").get_attribute("content")
        assert policy is not None
        assert policy.startswith("default-src 'none'; ")
        assert heard == []


def test_the_page_for_wrong_addresses_has_a_policy_too(page: Page, served: str):
    heard = complaints_of(page)
    page.goto(f"{served}/404.html")
    page.wait_for_load_state("networkidle")
    assert page.locator("meta[http-equiv=Content-Security-Policy]").count() == 1
    assert heard == []


def test_search_and_live_panels_work_on_a_server(page: Page, served: str):
    page.goto(f"{served}/index.html")
    page.locator("input[name=query]").click()
    page.locator("input[name=query]").press_sequentially("spark")
    page.locator(".md-search-result__link").first.wait_for(timeout=10_000)
    page.goto(f"{served}/practicals/handling-a-sealed-source.html")
    panel = page.locator("details:has(output):has([name=distance])").first
    panel.evaluate("one => { one.open = true }")
    before = panel.locator("output").first.inner_text()
    panel.locator("[name=distance]").first.fill("900")
    assert panel.locator("output").first.inner_text() != before
