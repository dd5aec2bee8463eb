"""What every card goes through last: an id from its own words, a code to look it up by, and its style."""

import hashlib
import html
import re
from dataclasses import dataclass, field
from functools import cache

import segno
from markupsafe import Markup

from clampstand.model.base import Entry
from clampstand.model.days import written_day
from clampstand.rendering.assets import ASSETS
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.policy import card_policy
from clampstand.rendering.templating import rendered

QUIET_ZONE = 4
"""Modules of white about a code; ISO/IEC 18004 asks for four."""
IN_FORCE = "cards.html"
"""The page that says which cards are in force; the code of every card leads there."""
_WHICH, _EDITION = 4, 8
"""Digits of an id that say which card it is, and which edition of it."""
_ID_TO_COME, _CODE_TO_COME = "\ufdd0", "\ufdd1"
"""Stand where the id and the code will: characters that Unicode keeps out of all text."""
_MASK = 2
"""Which of the eight masks a code is laid under: any is read, and choosing the best takes longest."""
_MAIN = re.compile(r"<main>.*</main>", re.DOTALL)
_TAG = re.compile(r"<[^>]*>")


@dataclass(frozen=True, slots=True)
class Printed:
    """What is printed about a card itself.

    Args:
        card_id: which card it is, and which edition of it, as ``3f9a-5c0d12ab``.
        address: where it can be looked up, without ``https://``; empty where the handbook has no address.
        code: the same address, with the id, as a code for a telephone's camera; empty with it.
    """

    card_id: str = ""
    address: str = ""
    code: Markup = field(default_factory=Markup)


@dataclass(frozen=True, slots=True)
class Card:
    """A finished card: the page for the browser, what is printed about it, what kind it is and of what."""

    page: SitePage
    printed: Printed
    kind: str
    about: Entry


def finished(
    uri: str, title: str, template: str, contents: Contents, about: Entry, **context: object
) -> Card:
    """A card as a page of its own. The same words give the same id, and any other word another one."""
    style = _style("../" * uri.count("/"))
    everything = {
        "title": title,
        "contents": contents,
        "book": contents.book,
        "style": style,
        "policy": card_policy(style),
        "pdf": f"{template}/{about.id}",
        **context,
    }
    site = contents.book.department.address
    address = f"{site.rstrip('/')}/{IN_FORCE}" if site else ""
    to_come = Printed(_ID_TO_COME, address.split("://", 1)[-1], Markup(_CODE_TO_COME if site else ""))
    blank = rendered(f"cards/{template}.jinja", uri, printed=to_come, **everything)
    card_id = _id_of(uri, blank, written_day(contents.day))
    code = code_for(f"{address}#{card_id}") if site else Markup()
    whole = blank.replace(_ID_TO_COME, card_id).replace(_CODE_TO_COME, code)
    page = SitePage(uri, f"{title} (card)", whole, written_in=about.spot.file, stands_alone=True)
    return Card(page, Printed(card_id, to_come.address, code), template, about)


def _id_of(uri: str, blank: str, day: str) -> str:
    """The id of a card from its address and from every word on its sides.

    The day is left out: a new day alone makes no card out of date, a figure that reads differently does.
    """
    sides = _MAIN.search(blank)
    words = html.unescape(_TAG.sub(" ", sides[0] if sides else blank)).replace(day, "")
    edition = _digits(" ".join(words.split()), _EDITION)
    return f"{_digits(uri, _WHICH)}-{edition}"


def _digits(text: str, how_many: int) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:how_many]


def code_for(address: str) -> Markup:
    """An address as a QR code, readable with up to 15 % of it dirty (level M), with its quiet zone."""
    made = segno.make(address, error="m", micro=False, mask=_MASK)
    drawn = made.svg_inline(
        border=QUIET_ZONE, title=f"Code for {address}", svgclass="code", lineclass=None, omitsize=True
    )
    return Markup(drawn.replace("<svg ", '<svg role="img" ', 1))


_FACE = (
    '@font-face {{ font-family: "Clampstand Sans"; font-weight: {weight}; src: '
    'url("{root}assets/clampstand/fonts/clampstand-sans-{weight}.woff2") format("woff2"); }}\n'
    '@font-face {{ font-family: "Clampstand Sans"; font-weight: {weight}; unicode-range: U+0100-024F; src: '
    'url("{root}assets/clampstand/fonts/clampstand-sans-{weight}-more.woff2") format("woff2"); }}\n'
)


@cache
def _style(root: str) -> Markup:
    """The card's own style, written into it so that a card copied to a stick still prints."""
    faces = "".join(_FACE.format(weight=weight, root=root) for weight in (400, 700))
    return Markup("\n" + faces + (ASSETS / "card.css").read_text(encoding="utf-8"))
