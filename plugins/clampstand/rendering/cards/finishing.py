"""What every card goes through last: an id from its own content, a code to look it up by, and its style."""

import hashlib
from dataclasses import dataclass, field
from functools import cache

import segno
from markupsafe import Markup

from clampstand.model.base import Entry
from clampstand.rendering.assets import ASSETS
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.templating import rendered

QUIET_ZONE = 4
"""Modules of white about a code; ISO/IEC 18004 asks for four."""
ID_LENGTH = 12


@dataclass(frozen=True, slots=True)
class Printed:
    """What is printed about a card itself.

    Args:
        card_id: the first digits of the SHA-256 of everything else on the card.
        address: where it can be looked up, without ``https://``; empty where the handbook has no address.
        code: the same address as a code for a telephone's camera; empty with it.
    """

    card_id: str = ""
    address: str = ""
    code: Markup = field(default_factory=Markup)


def finished(
    uri: str, title: str, template: str, contents: Contents, about: Entry, **context: object
) -> SitePage:
    """A card as a page of its own. The same content gives the same id, and any change another one."""
    everything = {"title": title, "contents": contents, "book": contents.book, "style": _style(), **context}
    blank = rendered(f"cards/{template}.jinja", uri, printed=Printed(), **everything)
    card_id = hashlib.sha256(blank.encode()).hexdigest()[:ID_LENGTH]
    printed = _printed(card_id, uri, contents)
    html = rendered(f"cards/{template}.jinja", uri, printed=printed, **everything)
    return SitePage(uri, f"{title} (card)", html, written_in=about.spot.file, stands_alone=True)


def _printed(card_id: str, uri: str, contents: Contents) -> Printed:
    site = contents.book.department.address
    if site is None:
        return Printed(card_id)
    whole = f"{site.rstrip('/')}/{uri}"
    return Printed(card_id, whole.split("://", 1)[-1], code_for(whole))


def code_for(address: str) -> Markup:
    """An address as a QR code, readable with up to 15 % of it dirty (level M), with its quiet zone."""
    made = segno.make(address, error="m", micro=False)
    drawn = made.svg_inline(
        border=QUIET_ZONE, title=f"Code for {address}", svgclass="code", lineclass=None, omitsize=True
    )
    return Markup(drawn.replace("<svg ", '<svg role="img" ', 1))


@cache
def _style() -> Markup:
    """The card's own style, written into it so that a card copied to a stick still prints."""
    return Markup((ASSETS / "card.css").read_text(encoding="utf-8"))
