"""Links from the first use of a word to what it means: where they stand, and where they do not."""

import pint
import pytest
from bs4 import BeautifulSoup

from clampstand.model.term import Term
from clampstand.rendering.page import SitePage
from clampstand.rendering.terms import Words, with_terms
from demo import demo, demo_pages


def term(its_id: str, name: str, *also: str) -> Term:
    made = Term(term=name, means=f'What "{name}" is <here>.', also=also)
    return made.placed(its_id, made.spot)


GLOSSARY = {
    one.id: one
    for one in (
        term("half-life", "half-life", "half life"),
        term("life", "life"),
        term("ht", "HT"),
        term("fume-cupboard", "fume cupboard", "fume hood (US)"),
        term("becquerel", "becquerel", "Bq"),
    )
}


def linked(html: str) -> list[tuple[str, str]]:
    """The words that became links, and the term each leads to."""
    page = with_terms(SitePage("practicals/any.html", "Any", html), Words(tuple(GLOSSARY.values())))
    links = BeautifulSoup(page.html, "html.parser").select("a.term")
    return [(link.get_text(), str(link["href"]).partition("#")[2]) for link in links]


def test_the_first_use_is_linked_and_only_that():
    assert linked("<p>A half-life. Another half life.</p>") == [("half-life", "half-life")]


def test_the_longest_name_wins():
    assert linked("<p>Its half life, its life.</p>") == [("half life", "half-life"), ("life", "life")]


@pytest.mark.parametrize("words", ["afterlife", "life-saver", "lifeless", "shtick", "ht"])
def test_part_of_a_word_is_not_the_word(words: str):
    assert linked(f"<p>{words}</p>") == []


def test_a_plural_and_a_capital_and_a_variant_are_the_same_word():
    assert linked("<p>Fume hoods</p>") == [("Fume hoods", "fume-cupboard")]


def test_a_unit_after_its_number_is_no_word():
    assert linked("<p>37\u00a0Bq, 5 Bq. Bq is its unit.</p>") == [("Bq", "becquerel")]


@pytest.mark.parametrize("tag", ["h1", "h2", "h3", "a", "blockquote", "summary", "button", "svg", "dt"])
def test_no_link_stands_in_a_heading_a_link_a_quote_a_control_or_a_drawing(tag: str):
    assert linked(f"<{tag}>HT <b>life</b></{tag}><p>life</p>") == [("life", "life")]


def test_what_it_means_cannot_break_out_of_the_link():
    page = with_terms(SitePage("practicals/any.html", "Any", "<p>HT</p>"), Words(tuple(GLOSSARY.values())))
    found = BeautifulSoup(page.html, "html.parser").select("p > a.term")
    assert [link["title"] for link in found] == ['What "HT" is <here>.']
    assert found[0]["href"] == "../glossary/index.html#ht"
    assert "<here>" not in page.html


def test_a_practical_of_the_demo_keeps_every_word_and_links_each_term_once():
    page = next(p for p in demo_pages() if p.uri == "practicals/spark-counter.html")
    soup = BeautifulSoup(page.html, "html.parser")
    leads_to = [link["href"] for link in soup.select("a.term")]
    assert len(leads_to) == len(set(leads_to)) >= 5
    assert not soup.select(":is(h1, h2, h3, a, blockquote, svg, summary) a.term")


def test_the_demo_explains_sixty_words_or_more_and_every_name_once():
    book = demo().book
    assert len(book.glossary) >= 60
    names = [name.casefold() for one in book.glossary.values() for name in one.names]
    assert sorted({name for name in names if names.count(name) > 1}) == []


@pytest.mark.parametrize(
    ("its_id", "old", "words"),
    [("curie", "1 Ci", "37 GBq"), ("rad", "1 rad", "0.01 Gy"), ("rem", "1 rem", "0.01 Sv")],
)
def test_old_units_are_worth_what_an_independent_table_says(its_id: str, old: str, words: str):
    """Against pint's own table, not the handbook's units. Its rad is the angle, its rads the dose."""
    book = demo().book
    assert f"{old} is {words}" in book.glossary[its_id].means
    units = pint.UnitRegistry()
    one = units.Quantity(old.replace("1 rad", "1 rads"))
    number, unit = words.split()
    assert one.m_as(unit) == pytest.approx(float(number), rel=1e-12)
