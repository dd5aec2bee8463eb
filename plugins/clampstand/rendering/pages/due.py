"""The page of what is due: tests, reviews, limits to read again and exceptions that end, by date."""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.model.book import Book
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made
from clampstand.rendering.templating import slug


@dataclass(frozen=True, slots=True, order=True)
class Due:
    """Something to be done by a day, and where to read about it."""

    by: dt.date
    what: str
    which: str
    href: str


def due_page(contents: Contents) -> SitePage:
    """Everything with a date, the overdue first."""
    return made(
        "due/index.html",
        "What is due",
        "due",
        contents,
        dues=sorted(dues(contents.book)),
        search=SearchWords("due overdue leak test review inspection calendar"),
        in_navigation=True,
    )


def dues(book: Book) -> Iterator[Due]:
    """Everything the department must do by a day."""
    yield from _of_apparatus(book)
    yield from _of_texts(book)


def _of_apparatus(book: Book) -> Iterator[Due]:
    for source in book.sources.values():
        if source.status == "disposed of":
            continue
        href = f"sources/index.html#{source.id}"
        yield Due(source.leak_test.every.after(source.leak_test.last), "leak test", source.id, href)
        if source.working_life:
            yield Due(source.working_life.after(source.received), "end of working life", source.id, href)
    for unit in book.supplies.values():
        if unit.status != "disposed of":
            yield Due(
                unit.every.after(unit.tested), "electrical test", unit.id, f"kit/index.html#{unit.item}"
            )


def _of_texts(book: Book) -> Iterator[Due]:
    for folder, shelf in (("practicals", book.practicals), ("skills", book.skills)):
        for entry in shelf.values():
            yield Due(entry.review.due, "read through again", entry.title, f"{folder}/{entry.id}.html")
    for practical in book.practicals.values():
        for exception in practical.exceptions:
            href = f"practicals/{practical.id}.html"
            yield Due(exception.expires, f"exception from {exception.rule} ends", practical.title, href)
    for limit in book.limits_in_force:
        yield Due(
            limit.check_again_by, "limit to read again", limit.title, f"limits/index.html#{slug(limit.key)}"
        )
