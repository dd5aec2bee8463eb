"""The technician's sheet of a practical: what to order, put out, check, count back and throw away."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from clampstand.calculators.kit_totals import KitTotal
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.model.book import Book
from clampstand.model.hazard import Hazard
from clampstand.model.kit import Item
from clampstand.model.practical import Expectation, Practical
from clampstand.rendering.contents import Contents
from clampstand.rendering.live.totals import totals_of
from clampstand.rendering.margins import margins
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.making import made
from clampstand.rendering.pages.practical import lengths, phases_of
from clampstand.rendering.prose import quotes_of
from clampstand.rendering.readiness import against
from clampstand.rendering.titles import has_class, titles_of


@dataclass(frozen=True, slots=True)
class Returned:
    """One line of what must come back from the lesson."""

    name: str
    count: int
    is_source: bool = False


@dataclass(frozen=True, slots=True)
class MadeUp:
    """A solution to make up: what was worked out for it, and what its label says of it."""

    entry: Expectation
    result: tuple[Worked, ...] | CannotWork
    item: Item
    hazards: tuple[Hazard, ...]


def prep_page(practical: Practical, contents: Contents) -> SitePage:
    """The technician's preparation sheet."""
    book, sheet = contents.book, contents.sheets[practical.id]
    return made(
        f"prep/{practical.id}.html",
        f"Preparing: {practical.title}",
        "prep",
        contents,
        about=practical,
        practical=practical,
        sheet=sheet,
        quotes=quotes_of(practical, book),
        against=against(practical, contents),
        rooms=contents.rooms_of(practical, "run"),
        prep_rooms=contents.rooms_of(practical, "prepare"),
        phases=phases_of(practical),
        titles=titles_of(practical),
        has_class=has_class(practical),
        lengths=lengths(sheet),
        orders=[each for each in sheet.totals if _is_ordered(each, book)],
        made_up=list(made_up(practical, contents)),
        other_totals=totals_of(practical, book),
        margins=list(margins(practical, ("prepare", "set_up"))),
        returned=list(returned(practical, sheet.totals, contents)),
    )


def _is_ordered(total: KitTotal, book: Book) -> bool:
    """Whether it is ordered, and not made on the way."""
    item = book.kit.get(total.line.item)
    return item is not None and item.lead is not None and not total.line.made_here


def made_up(practical: Practical, contents: Contents) -> Iterator[MadeUp]:
    """What is worked out for a solution of the kit, whose strength is known: the technician makes it up."""
    for entry, result in contents.sheets[practical.id].numbers:
        item = contents.book.kit.get(entry.given.get("item", ""))
        if item is not None and item.concentration is not None:
            hazards = (contents.book.hazards.get(name) for name in item.hazards)
            yield MadeUp(entry, result, item, tuple(hazard for hazard in hazards if hazard))


def returned(practical: Practical, totals: Iterable[KitTotal], contents: Contents) -> Iterable[Returned]:
    """What comes back: every source, then everything of the kit that is not used up."""
    for slot in practical.sources:
        yield Returned(" or ".join(slot.one_of), 1, is_source=True)
    counts = Counter[str]()
    for total in totals:
        if total.amount is None and not total.line.made_here:
            counts[total.line.item] += total.count
    for item_id, count in counts.items():
        item = contents.book.kit.get(item_id)
        if item and not item.consumable:
            yield Returned(item.called(count), count)
