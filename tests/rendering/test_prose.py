"""A person's sentence on a page: quotes written out, everything else text."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from clampstand.build import handbook
from clampstand.rendering.prose import Quotes, in_a_row, plain, prose, quotes_of, unbroken


@pytest.fixture
def quotes(tiny_content: Callable[[], Path]) -> Quotes:
    book = handbook(tiny_content()).book
    return quotes_of(book.practicals["sparks"], book)


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        ("Keep {hand distance} away.", "Keep 100\u00a0mm away."),
        ("Take {source} with {forceps}.", "Take S-1 with forceps."),
        ("Go down from {free: 50 mm}.", "Go down from 50\u00a0mm."),
        ("Ask {lead} in {lab}.", "Ask Head of physics in Laboratory."),
        ("{forceps} are long. {forceps} grip.", "Forceps are long. Forceps grip."),
        ("Is it dry? {forceps} grip: {forceps} alone.", "Is it dry? Forceps grip: forceps alone."),
        ("At 0.5 {forceps} are sold.", "At 0.5 forceps are sold."),
        ("{source} is out.", "S-1 is out."),
        ("See {electric-shock}.", "See Electric shock."),
        ("A {thing nobody declared} stays.", "A {thing nobody declared} stays."),
        ("Braces {} and { and }.", "Braces {} and { and }."),
    ],
)
def test_quotes_are_written_out(quotes: Quotes, written: str, printed: str):
    assert plain(written, quotes) == printed


def test_the_authors_words_are_escaped_and_quantities_kept_together(quotes: Quotes):
    html = prose("<b>{hand distance}</b> & {free: <i>1 mm}", quotes)
    assert html == (
        '&lt;b&gt;<span class="quantity">100\u00a0mm</span>&lt;/b&gt; &amp; '
        '<span class="quantity">&lt;i&gt;1\u00a0mm</span>'
    )


def test_a_quote_is_not_resolved_twice(quotes: Quotes):
    assert plain("{free: {source}}", quotes) == "{free: S-1}"


@pytest.mark.parametrize(
    ("written", "kept"),
    [
        ("2 m", "2\u00a0m"),
        ("30 mm to 40 mm", "30\u00a0mm to 40\u00a0mm"),
        ("15 000 ppm", "15\u00a0000\u00a0ppm"),
        ("4.5 kV ± 0.2 kV", "4.5\u00a0kV ± 0.2\u00a0kV"),
        ("24 months", "24\u00a0months"),
    ],
)
def test_a_number_keeps_its_unit_beside_it(written: str, kept: str):
    assert unbroken(written) == kept


def test_the_stop_word_is_quoted_where_one_is_declared(quotes: Quotes):
    said = 'My stop word is "{stop word}".'
    assert plain(said, replace(quotes, stop_word="freeze")) == 'My stop word is "freeze".'
    assert plain(said, quotes) == said


def test_a_name_with_a_capital_of_its_own_keeps_its_first_letter(quotes: Quotes):
    meter = quotes.book.kit["forceps"].model_copy(update={"name": "pH meter"})
    book = replace(quotes.book, kit={**quotes.book.kit, "forceps": meter})
    assert plain("{forceps} first.", replace(quotes, book=book)) == "pH meter first."


def test_names_stand_in_a_row_as_a_sentence_has_them():
    assert [in_a_row(["a", "b", "c"][:count]) for count in range(4)] == ["", "a", "a and b", "a, b and c"]
