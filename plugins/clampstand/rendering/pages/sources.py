"""The page of the register of sources, each with its activity on the day the handbook is worked out for."""

from collections.abc import Mapping
from contextlib import suppress

from clampstand.calculators.activity_today import activity_today
from clampstand.calculators.share_of_limits import share_of_limits
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.making import made, search_words


def sources_page(contents: Contents) -> SitePage:
    """Every source of the register."""
    sources = contents.book.sources
    return made(
        "sources/index.html",
        "Sources",
        "sources",
        contents,
        activities=activities(contents),
        here=[source for source in sources.values() if source.status != "disposed of"],
        shares=shares(contents),
        search=search_words(
            "The register: activity today, leak tests, places; the sheet for a count and the use log.",
            "radioactive",
            *sources,
        ),
        in_navigation=True,
    )


def activities(contents: Contents) -> Mapping[str, Worked]:
    """The activity of each source on the handbook's day; a source it cannot be worked out for is left out."""
    known: dict[str, Worked] = {}
    for source in contents.book.sources.values():
        with suppress(CannotWork):
            known[source.id] = activity_today(source, contents.book)
    return known


def shares(contents: Contents) -> tuple[tuple[bool, Worked], ...]:
    """For every pack that says what may be kept without a permit: whether it is in force, and the share.

    Packs that are not in force come last; a department that thinks of moving sources looks at them.
    """
    found: list[tuple[bool, Worked]] = []
    for pack in contents.book.packs.values():
        with suppress(CannotWork):
            found.append((pack in contents.book.packs_in_force, share_of_limits(contents.book, pack)))
    return tuple(sorted(found, key=lambda each: not each[0]))
