"""A person's sentence on a page: quotes written out, everything else text."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from clampstand.build import handbook
from clampstand.rendering.prose import Quotes, plain, prose, quotes_of, unbroken


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
