"""The page of what is due: orders, tests, counts, sign-offs, reviews, limits to read again, exceptions."""

import datetime as dt
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from clampstand.calculators.sign_offs import newest_sign_offs
from clampstand.limits import the_limit
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.days import written_day
from clampstand.model.limit import Limit
from clampstand.model.people import Duty
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made
from clampstand.rendering.pages.orders import every_order
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


@dataclass(frozen=True, slots=True)
class Task:
    """One kind of thing to do by a day, by the same people: a row, however many it is for."""

    by: dt.date
    what: str
    who: str
    of: tuple[Due, ...]


_SOON = dt.timedelta(days=31)
"""What is due within so long stands apart: a month, as people plan."""


def due_page(contents: Contents) -> SitePage:
    """Everything with a date: the overdue, what comes within a month, and the rest."""
    soon = contents.day + _SOON
    tasks = tasks_of((*dues(contents.book), *_of_orders(contents)))
    return made(
        "due/index.html",
        "What is due",
        "due",
        contents,
        overdue=[task for task in tasks if task.by < contents.day],
        soon_by=soon,
        soon=[task for task in tasks if contents.day <= task.by <= soon],
        later=[task for task in tasks if task.by > soon],
        search=SearchWords(
            "Tests, counts, orders, sign-offs and reviews, by the day they are due.",
            "overdue leak test inspection calendar",
        ),
        in_navigation=True,
    )


def tasks_of(dues: Iterable[Due]) -> list[Task]:
    """What is due, day by day; what the same people do by the same day together."""
    together: dict[tuple[dt.date, str, str], list[Due]] = {}
    for due in sorted(dues):
        together.setdefault((due.by, due.what, due.who), []).append(due)
    return [Task(by, what, who, tuple(of)) for (by, what, who), of in together.items()]


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
            what = "sign-off in a skill to renew" if shelf == "skills" else "sign-off to renew"
            yield Due(held.ends, what, entry.title if entry else its_id, href, held.entry.person)


def _of_orders(contents: Contents) -> Iterator[Due]:
    """What is still to be ordered for the lessons of the timetable; what had to be is on its day's sheet."""
    may = who_may("prepare", contents.book)
    for order in every_order(contents):
        if order.by >= contents.day:
            words = f"{order.item.name}, {order.amount}, for {written_day(order.lesson.date)}"
            yield Due(order.by, "order", words, f"days/{order.lesson.date.isoformat()}.html", may)


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
    again = (("practicals", "page", book.practicals), ("skills", "skill", book.skills))
    for folder, called, shelf in again:
        for entry in shelf.values():
            href, role = f"{folder}/{entry.id}.html", _role(entry.review.written_by, book)
            yield Due(entry.review.due, f"{called} to read through again", entry.title, href, role)
    for practical in book.practicals.values():
        for exception in practical.exceptions:
            href = f"practicals/{practical.id}.html"
            ends, role = f"exception from {exception.rule} ends", _role(exception.approved_by, book)
            yield Due(exception.expires, ends, practical.title, href, role)
    yield from _of_limits(book)


_FEW = 6
"""So many limits of one pack and day are named; of more a count says enough, for each says its own day."""


def _of_limits(book: Book) -> Iterator[Due]:
    in_force = {id(limit) for limit in book.limits_in_force}
    for pack in book.packs_in_force:
        by_day: dict[dt.date, list[Limit]] = {}
        for limit in pack.limits:
            if id(limit) in in_force:
                by_day.setdefault(limit.check_again_by, []).append(limit)
        for day, limits in by_day.items():
            if len(limits) > _FEW:
                yield Due(day, "limits to read again", f"{pack.title} ({len(limits)})", "limits/index.html")
                continue
            for limit in limits:
                href = f"limits/index.html#{slug(limit.key)}"
                yield Due(day, "limit to read again", limit.title, href)


def _role(contact: str, book: Book) -> str:
    return book.contacts[contact].role if contact in book.contacts else contact
