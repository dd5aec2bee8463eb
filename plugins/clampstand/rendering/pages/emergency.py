"""The pages of the emergencies: one list that every page leads to, and one page each."""

from clampstand.model.emergency import Emergency
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.making import made, search_words


def emergencies_page(contents: Contents) -> SitePage:
    """Every emergency by what is seen, and every number to ring."""
    emergencies = contents.book.emergencies.values()
    return made(
        "emergencies/index.html",
        "If it goes wrong",
        "emergencies",
        contents,
        search=search_words("emergency accident first aid", *(one.title for one in emergencies)),
        in_navigation=True,
    )


def emergency_page(emergency: Emergency, contents: Contents) -> SitePage:
    """What to do, in order, and whom to ring."""
    return made(
        f"emergencies/{emergency.id}.html",
        emergency.title,
        "emergency",
        contents,
        about=emergency,
        search=search_words("emergency", emergency.when, *emergency.search, weight=2.0),
        emergency=emergency,
    )
