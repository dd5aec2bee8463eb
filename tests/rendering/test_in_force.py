"""Which cards are in force: an id stands for the words on its card, and one page lists every id."""

import re
import shutil
from functools import cache
from pathlib import Path

from bs4 import BeautifulSoup

from clampstand.build import Handbook, handbook, site_pages
from clampstand.rendering.cards.finishing import IN_FORCE
from demo import CONTENT, demo

ID = re.compile(r"[0-9a-f]{4}-[0-9a-f]{8}")


def ids_of(judged: Handbook) -> dict[str, str]:
    """The id printed on every card, by the card's address."""
    pages = (page for page in site_pages(judged) if page.stands_alone)
    return {page.uri: BeautifulSoup(page.html, "html.parser").select_one(".card-id").text for page in pages}


@cache
def ids() -> dict[str, str]:
    return ids_of(demo())


def listed(judged: Handbook) -> dict[str, str]:
    """The ids the page lists, by the address each leads to."""
    page = next(page for page in site_pages(judged) if page.uri == IN_FORCE)
    rows = BeautifulSoup(page.html, "html.parser").select(".cards-in-force tbody tr")
    assert all(row["id"] == row.select_one(".card-id").text for row in rows)
    return {row.a["href"]: row["id"] for row in rows}


def changed(folder: Path, file: str, old: str, new: str) -> Handbook:
    copied = shutil.copytree(CONTENT, folder / "content")
    text = (copied / file).read_text(encoding="utf-8")
    assert old in text
    (copied / file).write_text(text.replace(old, new), encoding="utf-8")
    return handbook(copied)


def test_every_card_is_listed_under_the_id_printed_on_it() -> None:
    assert listed(demo()) == ids()
    assert all(ID.fullmatch(card_id) for card_id in ids().values())
    assert len(set(ids().values())) == len(ids())


def test_a_changed_step_puts_that_card_and_no_other_out_of_date(tmp_path: Path) -> None:
    old = ids()
    new = listed(
        changed(
            tmp_path, "practicals/spark-counter.yml", "Write the threshold on", "Write the threshold up on"
        )
    )
    assert {uri for uri in old if new[uri] != old[uri]} == {"cards/spark-counter.html"}
    before, after = old["cards/spark-counter.html"], new["cards/spark-counter.html"]
    assert before not in new.values()
    assert before.split("-")[0] == after.split("-")[0]  # which card it is stays the same


def test_a_new_day_puts_out_of_date_only_cards_that_read_differently(tmp_path: Path) -> None:
    """By hand, strontium-90: 94.6 kBq on 15 January, 93.2 kBq on 1 September."""
    next_day = listed(changed(tmp_path / "a", "department/department.yml", "2026-01-15", "2026-01-16"))
    assert next_day["cards/spark-counter.html"] == ids()["cards/spark-counter.html"]
    later = listed(changed(tmp_path / "b", "department/department.yml", "2026-01-15", "2026-09-01"))
    absorbers = "cards/alpha-beta-gamma-absorbers.html"
    assert later[absorbers] != ids()[absorbers]


def test_search_finds_the_page_by_an_id() -> None:
    page = next(page for page in site_pages(demo()) if page.uri == IN_FORCE)
    assert page.search is not None
    assert all(card_id in page.search.text for card_id in ids().values())
