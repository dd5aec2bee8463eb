"""Every contact can be reached as written; nothing is still to be filled in.

Why: a card is pulled out when something has happened. To be confirmed is then the same as nobody.

Wrong:
    contacts:
      first-aider: {call: extension TBC}

Right:
    contacts:
      first-aider: {call: extension 222}

Whose: this handbook.
"""

import re
from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "contact-reachable"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "whoever is to be rung can be rung")
PLACEHOLDER = re.compile(
    r"\b(?:tb[acd]|todo|fixme|to be (?:confirmed|announced|decided|added)|to follow|not yet known|unknown|"
    r"none|nobody|n/a|ask around|placeholder|your number(?: here)?|insert|x{3,}|0{3,})\b"
    r"|\?{2,}|_{2,}|\.{3,}|…|^\W*$",
    re.IGNORECASE,
)
"""Words that stand where something is still to be written; common practice."""


def check_book(book: Book) -> Iterator[Problem]:
    """The role and the call of every contact."""
    for contact in book.contacts.values():
        for key in ("role", "call"):
            written = getattr(contact, key)
            if match := PLACEHOLDER.search(written):
                yield Problem(
                    contact.at(key),
                    f"{contact.id}: {match.group().strip() or written} is no way to reach anybody",
                    found=written,
                    needed="a number to dial or a place to go to",
                    mend="ask, and write it down today",
                    whose=RULE,
                )
