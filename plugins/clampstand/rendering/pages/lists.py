"""The pages that list a whole shelf: home, practicals, kit, sources, citations."""

from collections.abc import Mapping
from dataclasses import dataclass

from clampstand.findings import Finding
from clampstand.model.practical import Practical
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made
from clampstand.rendering.readiness import against
from clampstand.units import number_in, unit

_MINUTE = unit("min")


@dataclass(frozen=True, slots=True)
class Row:
    """A practical as one line of a table, with what the table can be narrowed by."""

    practical: Practical
    families: tuple[str, ...]
    rooms: tuple[str, ...]
    minutes: int
    kit: tuple[str, ...]
    against: tuple[Finding, ...]


def row_of(practical: Practical, contents: Contents) -> Row:
    """The line of one practical."""
    hazards, items = contents.book.hazards, contents.book.kit
    families = sorted({hazards[h.hazard].family for h in practical.hazards if h.hazard in hazards})
    lesson = contents.sheets[practical.id].clocks.get("run")
    return Row(
        practical,
        tuple(families),
        tuple(contents.rooms_of(practical, "run")),
        round(number_in(lesson[-1].ends, _MINUTE)) if lesson else 0,
        tuple(sorted({items[item].name for item in practical.items if item in items})),
        against(practical, contents),
    )


def rows(contents: Contents) -> list[Row]:
    """Every practical, by subject and title."""
    practicals = contents.book.practicals.values()
    return [row_of(p, contents) for p in sorted(practicals, key=lambda p: (p.subject, p.title.casefold()))]


def home_page(contents: Contents) -> SitePage:
    """The front page: find a practical, what stands against running any, what to do when it goes wrong."""
    return made(
        "index.html",
        "Start",
        "home",
        contents,
        rows=rows(contents),
        in_navigation=True,
    )


def practicals_page(contents: Contents) -> SitePage:
    """The table of every practical, which the reader can narrow down."""
    listed = rows(contents)
    return made(
        "practicals/index.html",
        "Practicals",
        "practicals",
        contents,
        rows=listed,
        choices=choices(listed),
        search=SearchWords(
            "Every practical in one table: by subject, topic, kit, hazard, room, age and time."
        ),
        in_navigation=True,
    )


def choices(listed: list[Row]) -> Mapping[str, list[str]]:
    """What the table may be narrowed by, and the values that occur."""
    return {
        "subject": sorted({row.practical.subject for row in listed}),
        "hazard": sorted({family for row in listed for family in row.families}),
        "room": sorted({room for row in listed for room in row.rooms}),
        "topic": sorted({topic for row in listed for topic in row.practical.topics}),
        "kit": sorted({item for row in listed for item in row.kit}, key=str.casefold),
    }


def kit_page(contents: Contents) -> SitePage:
    """Every item: where it is kept, where it is used, what to look at."""
    items = sorted(contents.book.kit.values(), key=lambda item: item.name.casefold())
    names = (name for item in items for name in (item.name, *item.also))
    return made(
        "kit/index.html",
        "Kit",
        "kit",
        contents,
        items=items,
        faults=[fault for fault in contents.book.faults.values() if fault.cleared is None],
        search=SearchWords(
            "Where each item is kept, how many there are, what to look at.", " ".join(dict.fromkeys(names))
        ),
        in_navigation=True,
    )


def citations_page(contents: Contents) -> SitePage:
    """Every source a figure or a limit names, and how much of it was read."""
    citations = sorted(contents.book.citations.values(), key=lambda one: one.title.casefold())
    return made(
        "citations/index.html",
        "Where figures come from",
        "citations",
        contents,
        citations=citations,
        search=SearchWords(
            "The standards, laws, books and data that figures come from.", "citations references"
        ),
        in_navigation=True,
    )
