"""The page of what is due: tests, counts, sign-offs, reviews, limits to read again, exceptions that end."""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.calculators.sign_offs import newest_sign_offs
from clampstand.limits import the_limit
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.people import Duty
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
    who: str = ""
    """The roles who see to it."""


def due_page(contents: Contents) -> SitePage:
    """Everything with a date, the overdue first."""
    return made(
        "due/index.html",
        "What is due",
        "due",
        contents,
        dues=sorted(dues(contents.book)),
        search=SearchWords("due overdue leak test count sign-off review inspection calendar"),
        in_navigation=True,
    )


def dues(book: Book) -> Iterator[Due]:
    """Everything the department must do by a day."""
    yield from _of_apparatus(book)
    yield from _of_people(book)
    yield from _of_texts(book)


def who_may(duty: Duty, book: Book) -> str:
    """The codes of everybody who may do something."""
    return ", ".join(person.id for person in book.people.values() if duty in person.may)


def _of_people(book: Book) -> Iterator[Due]:
    for held in newest_sign_offs(book):
        shelf, its_id = held.entry.subject
        if held.ends is not None:
            entry = book.skills.get(its_id) if shelf == "skills" else book.practicals.get(its_id)
            href = f"{shelf}/{its_id}.html"
            yield Due(
                held.ends, "sign-off to renew", entry.title if entry else its_id, href, held.entry.person
            )


def _count_interval(book: Book) -> Interval | None:
    limit = the_limit("radiation.count-interval", book)
    return limit.value if limit is not None and isinstance(limit.value, Interval) else None


def _of_apparatus(book: Book) -> Iterator[Due]:
    every, tester = _count_interval(book), who_may("test", book)
    for source in book.sources.values():
        if source.status == "disposed of":
            continue
        href = f"sources/index.html#{source.id}"
        yield Due(source.leak_test.every.after(source.leak_test.last), "leak test", source.id, href, tester)
        if every is not None:
            yield Due(every.after(source.last_seen), "count", source.id, href, who_may("count", book))
        if source.working_life and source.status != "awaiting disposal":  # its use has ended already
            yield Due(source.working_life.after(source.received), "end of working life", source.id, href)
    for unit in book.supplies.values():
        if unit.status != "disposed of":
            href = f"kit/index.html#{unit.item}"
            yield Due(unit.every.after(unit.tested), "electrical test", unit.id, href, tester)


def _of_texts(book: Book) -> Iterator[Due]:
    for folder, shelf in (("practicals", book.practicals), ("skills", book.skills)):
        for entry in shelf.values():
            href, writer = f"{folder}/{entry.id}.html", entry.review.written_by
            role = book.contacts[writer].role if writer in book.contacts else writer
            yield Due(entry.review.due, "read through again", entry.title, href, role)
    for practical in book.practicals.values():
        for exception in practical.exceptions:
            href = f"practicals/{practical.id}.html"
            yield Due(exception.expires, f"exception from {exception.rule} ends", practical.title, href)
    for limit in book.limits_in_force:
        yield Due(
            limit.check_again_by, "limit to read again", limit.title, f"limits/index.html#{slug(limit.key)}"
        )
