"""The built demo in the repository is the handbook that the content makes today."""

import json
from pathlib import Path

from clampstand.build import card_files
from clampstand.rendering.assets import assets
from clampstand.rendering.contents import Paper
from demo import demo, demo_pages

ROOT = Path(__file__).parents[1]
SITE = ROOT / "site_demo"
PAPER: Paper = "a4"
MEND = "site_demo/ is stale: run clampstand build and commit it"


def test_the_demo_has_no_stop() -> None:
    assert not [f"{f.place.file}:{f.place.line} {f.message}" for f in demo().findings if f.stops]


def test_every_warning_of_the_demo_is_an_allowed_exception() -> None:
    assert [finding.message for finding in demo().findings if "(allowed until" not in finding.message] == []


def test_every_page_is_built_as_the_content_has_it() -> None:
    stale = []
    for page in demo_pages(PAPER):
        path = SITE / page.uri
        text = path.read_text(encoding="utf-8") if path.is_file() else ""
        if (text != page.html) if page.stands_alone else (page.html not in text):
            stale.append(page.uri)
    assert stale == [], MEND


def test_no_page_is_left_from_older_content() -> None:
    made = {page.uri for page in demo_pages(PAPER)}
    by_hand = {path.name.replace(".md", ".html") for path in (ROOT / "content/pages").glob("*.md")}
    built = {path.relative_to(SITE).as_posix() for path in SITE.rglob("*.html")}
    assert built - made - by_hand - {"404.html"} == set(), MEND


def test_every_pdf_is_the_card_as_the_content_has_it() -> None:
    made = {f"cards/{path}": pdf for path, pdf in card_files(demo(), PAPER)}
    assert {path.relative_to(SITE).as_posix() for path in SITE.rglob("*.pdf")} == set(made), MEND
    assert [path for path, pdf in made.items() if not _same(SITE / path, pdf)] == [], MEND


def test_every_asset_of_ours_is_there() -> None:
    stale = [name for name, content in assets().files.items() if not _same(SITE / name, content)]
    assert stale == [], MEND


def _same(path: Path, content: bytes | str) -> bool:
    raw = content.encode() if isinstance(content, str) else content
    return path.is_file() and path.read_bytes() == raw


def test_search_knows_every_page_that_wants_to_be_found() -> None:
    index = json.loads((SITE / "search/search_index.json").read_text(encoding="utf-8"))
    known = {entry["location"] for entry in index["docs"]}
    assert {page.uri for page in demo_pages(PAPER) if page.search is not None} <= known, MEND
