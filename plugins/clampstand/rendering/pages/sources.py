"""The page of the register of sources, each with its activity on the day the handbook is worked out for."""

from collections.abc import Mapping

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
        search=search_words("radioactive sources register activity leak test", *sources),
        in_navigation=True,
    )


def activities(contents: Contents) -> Mapping[str, Worked]:
    """The activity of each source on the handbook's day, as the practicals that use it worked it out."""
    known: dict[str, Worked] = {}
    for sheet in contents.sheets.values():
        for _, result in sheet.numbers:
            if not isinstance(result, CannotWork):
                known |= {number.id: number for number in result}
    prefix = "activity-today/"
    return {its_id.removeprefix(prefix): n for its_id, n in known.items() if its_id.startswith(prefix)}
