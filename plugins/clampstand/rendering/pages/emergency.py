"""The pages of the emergencies: one list that every page leads to, and one page each."""

import re
from collections import Counter

from clampstand.model.emergency import Emergency
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.making import made, search_words


def emergencies_page(contents: Contents) -> SitePage:
    """Every emergency by what is seen, and every number to ring."""
    emergencies = sorted(contents.book.emergencies.values(), key=lambda one: _by_name(one.title))
    most_rung = Counter(contact for one in emergencies for contact in one.ring)
    contacts = sorted(contents.book.contacts.values(), key=lambda one: -most_rung[one.id])
    return made(
        "emergencies/index.html",
        "If it goes wrong",
        "emergencies",
        contents,
        search=search_words(
            "Every procedure: what to say, what to do first, whom to ring.",
            "emergency accident first aid",
            *(one.title for one in emergencies),
        ),
        in_navigation=True,
        emergencies=emergencies,
        calls=contacts,
    )


def _by_name(title: str) -> str:
    """What a title is looked up by: ``A source is missing`` stands under S."""
    return re.sub("^(a|an|the) ", "", title.casefold())


def emergency_page(emergency: Emergency, contents: Contents) -> SitePage:
    """What to do, in order, and whom to ring."""
    return made(
        f"emergencies/{emergency.id}.html",
        emergency.title,
        "emergency",
        contents,
        about=emergency,
        search=search_words(emergency.when, *emergency.search, tags=("emergency",), weight=2.0),
        emergency=emergency,
    )
