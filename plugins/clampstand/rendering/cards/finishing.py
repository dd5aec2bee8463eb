"""What every card goes through last: an id from its own content, a code to look it up by, and its style."""

import hashlib
from dataclasses import dataclass, field, replace
from functools import cache

import segno
from markupsafe import Markup

from clampstand.model.base import Entry
from clampstand.rendering.assets import ASSETS
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.policy import card_policy
from clampstand.rendering.templating import rendered

QUIET_ZONE = 4
"""Modules of white about a code; ISO/IEC 18004 asks for four."""
ID_LENGTH = 12
_ID_TO_COME = "\ufdd0"
"""Stands where the id will: a character that Unicode keeps out of all text, and so no content holds it."""
_MASK = 2
"""Which of the eight masks a code is laid under: any is read, and choosing the best takes longest."""


@dataclass(frozen=True, slots=True)
class Printed:
    """What is printed about a card itself.

    Args:
        card_id: the first digits of the SHA-256 of everything else on the card, code included.
        address: where it can be looked up, without ``https://``; empty where the handbook has no address.
        code: the same address as a code for a telephone's camera; empty with it.
    """

    card_id: str = ""
    address: str = ""
    code: Markup = field(default_factory=Markup)


@dataclass(frozen=True, slots=True)
class Card:
    """A finished card: the page for the browser, and what is printed about it on that and any other paper."""

    page: SitePage
    printed: Printed


def finished(
    uri: str, title: str, template: str, contents: Contents, about: Entry, **context: object
) -> Card:
    """A card as a page of its own. The same content gives the same id, and any change another one."""
    style = _style("../" * uri.count("/"))
    everything = {
        "title": title,
        "contents": contents,
        "book": contents.book,
        "style": style,
        "policy": card_policy(style),
        **context,
    }
    printed = _printed(uri, contents)
    blank = rendered(f"cards/{template}.jinja", uri, printed=printed, **everything)
    card_id = hashlib.sha256(blank.encode()).hexdigest()[:ID_LENGTH]
    html = blank.replace(_ID_TO_COME, card_id)
    page = SitePage(uri, f"{title} (card)", html, written_in=about.spot.file, stands_alone=True)
    return Card(page, replace(printed, card_id=card_id))


def _printed(uri: str, contents: Contents) -> Printed:
    site = contents.book.department.address
    if site is None:
        return Printed(_ID_TO_COME)
    whole = f"{site.rstrip('/')}/{uri}"
    return Printed(_ID_TO_COME, whole.split("://", 1)[-1], code_for(whole))


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
)


@cache
def _style(root: str) -> Markup:
    """The card's own style, written into it so that a card copied to a stick still prints."""
    faces = "".join(_FACE.format(weight=weight, root=root) for weight in (400, 700))
    return Markup("\n" + faces + (ASSETS / "card.css").read_text(encoding="utf-8"))
