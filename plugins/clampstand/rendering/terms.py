"""The first use of each term on a finished page leads to what it means."""

import re
from collections.abc import Iterator
from dataclasses import replace

from markupsafe import escape

from clampstand.model.term import Term
from clampstand.rendering.page import SitePage

GLOSSARY = "glossary/index.html"

_LETTERS = re.compile(r"[^\W\d_]{2}")
_TAG = re.compile(r"(<[^>]*>)")
_NAME = re.compile(r"<(/?)([a-z][a-z0-9]*)")
_HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
_CONTROLS = ("button", "form", "label", "nav", "output", "select", "summary")
_NOT_IN = frozenset([*_HEADINGS, *_CONTROLS, "a", "blockquote", "dt", "script", "svg"])
"""Where a link would be in the way: in headings, links, what somebody says, controls and drawings."""
_QUIET = re.compile(r'class="(?:quantity|step__clock|mark|doors)\b')
_VOID = frozenset(["br", "hr", "img", "input", "meta", "link", "wbr"])


def with_terms(page: SitePage, words: "Words | None") -> SitePage:
    """The page with the first use of each term as a link. One of our own pages, whose tags all close."""
    if words is None:
        return page
    to_top = "../" * page.uri.count("/")
    return replace(page, html="".join(_linked(page.html, words, to_top)))


def _linked(html: str, words: "Words", to_top: str) -> Iterator[str]:
    used: set[str] = set()
    quiet: list[bool] = [False]
    for piece in _TAG.split(html):
        tag = _NAME.match(piece)
        if tag is not None:
            _step(quiet, piece, closing=bool(tag[1]), name=tag[2])
        if tag is not None or quiet[-1] or not _LETTERS.search(piece):
            yield piece
        else:
            yield words.linked(piece, used, to_top)


def _step(quiet: list[bool], tag: str, *, closing: bool, name: str) -> None:
    """Go into an element or out of it; inside one that is quiet everything is."""
    if closing:
        quiet.pop()
    elif name not in _VOID and not tag.endswith("/>"):
        quiet.append(quiet[-1] or name in _NOT_IN or bool(_QUIET.search(tag)))


class Words:
    """Every name of every term, the longest first, so that part of a name is not taken for another."""

    def __init__(self, terms: tuple[Term, ...]) -> None:
        self._terms = {_key(name): term for term in reversed(terms) for name in reversed(term.names)}
        names = sorted({name for term in terms for name in term.names}, key=lambda name: (-len(name), name))
        choices = "|".join(map(_pattern, names))
        # A unit after its number is no word, and part of a word is not the word.
        self._any = re.compile(rf"(?<![\w-])(?<![0-9][\s\u00a0])(?:{choices})(?![\w-])")

    def linked(self, text: str, used: set[str], to_top: str) -> str:
        """The text with a link at the first use of each term that is not among the used ones yet."""

        def link(found: re.Match[str]) -> str:
            term = self._terms.get(_key(found[0])) or self._terms[_key(found[0].removesuffix("s"))]
            if term.id in used:
                return found[0]
            used.add(term.id)
            where = f"{to_top}{GLOSSARY}#{term.id}"
            return f'<a class="term" href="{where}" title="{escape(term.means)}">{found[0]}</a>'

        return self._any.sub(link, text)


def _key(name: str) -> str:
    return " ".join(name.split()).casefold()


def _pattern(name: str) -> str:
    """A name with any space and a plural; capitals count where they make the word, as in HT."""
    spaced = r"\s+".join(map(re.escape, name.split()))
    return spaced if re.search(r"\w[A-Z]", name) else f"(?i:{spaced}s?)"
