"""The plugin: what it hands to MkDocs, and that a site is whole or not published at all."""

import hashlib
import os
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import markdown
import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort
from pypdf import PdfReader

from clampstand.rendering.pdf import printing

SITE = """\
site_name: Tests
repo_url: https://git.example.org/tests/handbook
edit_uri: edit/main/content/pages/
docs_dir: content/pages
site_dir: site
use_directory_urls: false
theme: {name: material, font: false, features: [content.action.edit]}
plugins: [clampstand, search, offline]
nav: [index.md, hand.md, practicals/index.md]
"""
CALM = """\
title: Sparks
aim: See sparks in air.
subject: physics
topics: [weather]
ages: 11 to 18
led_by: teacher
pupils: watch
needs: {}
lesson: 10 min
where: {run: lab}
kit: [{item: plates, per: class}]
run:
  - {do: "Look at {plates}.", by: teacher, takes: 10 min}
review: {version: 1, last: 2025-09-01, written_by: technician, approved_by: lead, due: 2026-09-01}
"""
"""A practical in which nothing can hurt, so that no rule has anything to say."""
SKILL = """\
title: Looking
aim: Look closely.
good_looks_like: [Calm eyes.]
steps: [{do: Look., by: teacher, takes: 1 min}]
sign_off: [Calm eyes.]
lasts: 12 months
review: {version: 1, last: 2025-09-01, written_by: technician, approved_by: lead, due: 2026-09-01}
"""
HAND = "# By hand\n\nSee the [practicals](practicals/index.md).\n"

Change = dict[str, str | bytes | None]


@pytest.fixture
def handbook(tiny_content: Callable[[Change], Path], tmp_path: Path) -> Path:
    """A folder with the tiny handbook, a hand-written page and a mkdocs.yml."""
    tiny_content({"pages/hand.md": HAND, "practicals/sparks.yml": CALM, "skills/forceps-work.yml": SKILL})
    (tmp_path / "mkdocs.yml").write_text(SITE, encoding="utf-8")
    return tmp_path


def published(folder: Path, *, strict: bool = True, command: str = "build") -> Path:
    """Build as the command line does, start-up and shut-down included; gives the site's folder."""
    config = load_config(str(folder / "mkdocs.yml"), strict=strict)
    config.plugins.on_startup(command=command, dirty=False)
    try:
        build(config)
    finally:
        config.plugins.on_shutdown()
    return folder / "site"


def bytes_of(site: Path) -> dict[str, str]:
    files = (path for path in sorted(site.rglob("*")) if path.is_file())
    return {
        path.relative_to(site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files
    }


def rewrite(folder: Path, file: str, old: str, new: str) -> None:
    path = folder / "content" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def test_edit_link_opens_the_file_the_page_was_written_in(handbook: Path):
    page = (published(handbook) / "practicals/sparks.html").read_text(encoding="utf-8")
    assert 'href="https://git.example.org/tests/handbook/edit/main/content/practicals/sparks.yml"' in page


def test_pages_of_many_definitions_have_no_edit_link(handbook: Path):
    page = (published(handbook) / "kit/index.html").read_text(encoding="utf-8")
    assert "/edit/main/" not in page


def test_generated_pages_never_meet_markdown(handbook: Path, monkeypatch: pytest.MonkeyPatch):
    converted: list[str] = []
    convert = markdown.Markdown.convert
    monkeypatch.setattr(
        markdown.Markdown, "convert", lambda self, text: converted.append(text) or convert(self, text)
    )
    published(handbook)
    assert [text.split("\n")[0] for text in converted] == ["# By hand"]


def test_a_page_written_by_hand_wins_over_a_generated_one(handbook: Path):
    (handbook / "content/pages/index.md").write_text("# Our own front page\n", encoding="utf-8")
    assert "Our own front page" in (published(handbook) / "index.html").read_text(encoding="utf-8")


def with_pdf(folder: Path, paper: str) -> None:
    """Ask for cards as PDF in mkdocs.yml."""
    site = SITE.replace("plugins: [clampstand,", f"plugins: [clampstand: {{pdf: {paper}}},")
    assert site != SITE
    (folder / "mkdocs.yml").write_text(site, encoding="utf-8")


def links_to_pdf(site: Path) -> Iterator[Path]:
    """Every PDF a page links to."""
    for page in site.rglob("*.html"):
        for link in re.findall(r'href="([^"]+[.]pdf)"', page.read_text(encoding="utf-8")):
            yield (page.parent / link).resolve()


def test_cards_lie_beside_the_pages_as_pdf_where_a_paper_is_named(handbook: Path):
    assert not list(published(handbook).rglob("*.pdf"))
    assert not list(links_to_pdf(handbook / "site"))
    with_pdf(handbook, "letter")
    site = published(handbook)
    made = set(site.rglob("*.pdf"))
    names = {path.relative_to(site / "cards").as_posix() for path in made}
    assert {"all.pdf", "practical/sparks.pdf", "skill/forceps-work.pdf"} <= names
    assert set(links_to_pdf(site)) == made
    assert all(
        float(PdfReader(path).pages[0].mediabox.height) == pytest.approx(792) for path in made
    )  # 11 in


def test_a_card_too_full_for_its_sides_stops_the_build(handbook: Path, caplog: pytest.LogCaptureFixture):
    with_pdf(handbook, "a4")
    before = bytes_of(published(handbook))
    rewrite(
        handbook,
        "skills/forceps-work.yml",
        "good_looks_like: [Calm eyes.]",
        f"good_looks_like: {['Calm.'] * 150}",
    )
    with pytest.raises(Abort):
        published(handbook)
    assert re.search(r"nothing was published: Looking, side 1, is too full by [0-9.]+ mm", caplog.text)
    assert bytes_of(handbook / "site") == before


def test_without_typst_the_build_says_how_to_have_pdf(
    handbook: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
):
    with_pdf(handbook, "a4")
    monkeypatch.setitem(sys.modules, "typst", None)
    printing.compiler.cache_clear()
    with pytest.raises(Abort):
        published(handbook)
    assert "clampstand[pdf]" in caplog.text
    assert not (handbook / "site").exists()


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        ("practicals/sparks.yml", "lesson: 10 min", "lesson: 20 min"),
        ("practicals/sparks.yml", "item: plates", "item: plattes"),
        ("pages/hand.md", "practicals/index.md", "practicals/indx.md"),
        ("department/department.yml", "class_size: 24", "class_size: many"),
    ],
    ids=["rule", "unknown id", "broken link in strict mode", "unreadable department"],
)
def test_a_build_that_fails_leaves_the_old_site_as_it_was(handbook: Path, file: str, old: str, new: str):
    before = bytes_of(published(handbook))
    rewrite(handbook, file, old, new)
    with pytest.raises(Abort):
        published(handbook)
    assert bytes_of(handbook / "site") == before
    assert sorted(path.name for path in handbook.iterdir()) == ["content", "mkdocs.yml", "site"]


def test_a_first_build_that_fails_leaves_no_site(handbook: Path):
    rewrite(handbook, "practicals/sparks.yml", "lesson: 10 min", "lesson: 20 min")
    with pytest.raises(Abort):
        published(handbook)
    assert not (handbook / "site").exists()


def test_the_new_site_replaces_the_old_one_whole(handbook: Path):
    published(handbook)
    (handbook / "content/practicals/sparks.yml").rename(handbook / "content/practicals/flashes.yml")
    site = published(handbook)
    assert (site / "practicals/flashes.html").exists()
    assert not (site / "practicals/sparks.html").exists()


def test_the_same_content_gives_the_same_bytes_on_another_day(
    handbook: Path, monkeypatch: pytest.MonkeyPatch
):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")
    before = bytes_of(published(handbook))
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1800000000")
    assert bytes_of(published(handbook)) == before


def test_nothing_is_published_that_no_reader_loads(handbook: Path):
    site = published(handbook)
    assert not list(site.rglob("*.map"))
    assert not (site / "assets/javascripts/lunr").exists()


def test_no_page_names_another_host_to_load_from(handbook: Path):
    site = published(handbook)
    for page in site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        for loads in ('src="http', "src='http", 'rel="stylesheet" href="http', "url(http", "unpkg.com"):
            assert loads not in text, (page.name, loads)


def test_hostile_words_stay_words_in_pages_titles_and_search(handbook: Path):
    rewrite(handbook, "practicals/sparks.yml", "title: Sparks", "title: <img src=x onerror=alert(1)> & co")
    rewrite(
        handbook,
        "practicals/sparks.yml",
        "aim: See sparks in air.",
        "aim: '<script>alert(2)</script> [x](javascript:alert(3))'",
    )
    site = published(handbook)
    for page in [*site.rglob("*.html"), *site.glob("search/*")]:
        text = page.read_text(encoding="utf-8")
        assert "<img src=x" not in text, page.name
        assert "<script>alert" not in text, page.name
        assert 'href="javascript:' not in text, page.name
    page = (site / "practicals/sparks.html").read_text(encoding="utf-8")
    assert "&lt;script&gt;alert(2)&lt;/script&gt; [x](javascript:alert(3))" in page


def test_while_serving_the_front_page_says_what_stops(handbook: Path):
    rewrite(handbook, "practicals/sparks.yml", "lesson: 10 min", "lesson: 20 min")
    front = (published(handbook, strict=False, command="serve") / "index.html").read_text(encoding="utf-8")
    assert "Not to be published" in front
    assert "practicals/sparks.yml:" in front


def test_a_missing_content_folder_is_said_in_words(handbook: Path):
    (handbook / "mkdocs.yml").write_text(
        SITE.replace("plugins: [clampstand,", "plugins: [clampstand: {content: contents},"), encoding="utf-8"
    )
    environment = os.environ | {"NO_MKDOCS_2_WARNING": "1"}
    command = [sys.executable, "-m", "mkdocs", "build", "--config-file", str(handbook / "mkdocs.yml")]
    result = subprocess.run(command, capture_output=True, text=True, check=False, env=environment)
    assert result.returncode == 1
    assert "there is no content folder contents beside mkdocs.yml" in result.stderr
    assert "Traceback" not in result.stderr
