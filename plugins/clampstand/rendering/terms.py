"""The first use of each term on a finished page leads to what it means."""

import re
from collections.abc import Iterator
from dataclasses import replace

from markupsafe import escape

from clampstand.model.term import Term
from clampstand.rendering.page import SitePage

GLOSSARY = "glossary/index.html"

_WORD = re.compile(r"\w+")
_HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
_CONTROLS = ("button", "form", "label", "nav", "output", "select", "summary")
_NOT_IN = "|".join((*_HEADINGS, *_CONTROLS, "a", "blockquote", "dt", "script", "svg"))
"""Where a link would be in the way: in headings, links, what somebody says, controls and drawings."""
_QUIET = "quantity|step__clock|mark|doors"
"""Classes of elements in which it would be, too."""
_NO_TEXT = re.compile(
    rf'(?:(?:<({_NOT_IN})\b.*?</\1>|<([a-z]+) class="(?:{_QUIET})\b.*?</\2>|<[^>]*>)\s*)+', re.DOTALL
)
"""Tags, and elements that are passed over whole; none of these holds another of its own name."""


def with_terms(page: SitePage, words: "Words | None") -> SitePage:
    """The page with the first use of each term as a link. One of our own pages, whose tags all close."""
    if words is None:
        return page
    to_top = "../" * page.uri.count("/")
    return replace(page, html="".join(_linked(page.html, words, to_top)))


def _linked(html: str, words: "Words", to_top: str) -> Iterator[str]:
    used: set[str] = set()
    end = 0
    for skipped in _NO_TEXT.finditer(html):
        yield words.linked(html[end : skipped.start()], used, to_top)
        yield skipped[0]
        end = skipped.end()
    yield words.linked(html[end:], used, to_top)


class Words:
    """Every name of every term, the longest first, so that part of a name is not taken for another."""

    def __init__(self, terms: tuple[Term, ...]) -> None:
        self._terms = {_key(name): term for term in reversed(terms) for name in reversed(term.names)}
        names = sorted({name for term in terms for name in term.names}, key=lambda name: (-len(name), name))
        choices = "|".join(map(_pattern, names))
        # A unit after its number is no word, and part of a word is not the word.
        self._any = re.compile(rf"(?<![\w-])(?<![0-9][\s\u00a0])(?:{choices})(?![\w-])")
        self._by_first_word: dict[str, set[str]] = {}
        for key in self._terms:
            first = _WORD.findall(key)[0]
            for word in (first, first + "s"):
                self._by_first_word.setdefault(word, set()).add(key)

    def linked(self, text: str, used: set[str], to_top: str) -> str:
        """The text with a link at the first use of each term that is not among the used ones yet."""

        def link(found: re.Match[str]) -> str:
            term = self._terms.get(_key(found[0])) or self._terms[_key(found[0].removesuffix("s"))]
            if term.id in used:
                return found[0]
            used.add(term.id)
            where = f"{to_top}{GLOSSARY}#{term.id}"
            return f'<a class="term" href="{where}" title="{escape(term.means)}">{found[0]}</a>'

        return self._any.sub(link, text) if self._may_hold_another(text, used) else text

    def _may_hold_another(self, text: str, used: set[str]) -> bool:
        """Whether the name of a term not used yet may be in a text: much cheaper to see than where."""
        words = _WORD.findall(text.casefold())
        if self._by_first_word.keys().isdisjoint(words):
            return False  # as in most texts
        key = _key(text)
        for word in words:
            for name in self._by_first_word.get(word, ()):
                if name in key and self._terms[name].id not in used:
                    return True
        return False


def _key(name: str) -> str:
    return " ".join(name.split()).casefold()


def _pattern(name: str) -> str:
    """A name with any space and a plural; capitals count where they make the word, as in HT."""
    spaced = r"\s+".join(map(re.escape, name.split()))
    return spaced if re.search(r"\w[A-Z]", name) else f"(?i:{spaced}s?)"
