"""The preparation room's sheet for each day of the timetable, and the page that lists the days."""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from clampstand.calculators.day import (
    Lessons,
    Put,
    Wanted,
    by_period,
    kit_for,
    known_lessons,
    set_up_length,
    sources_for,
    start_by,
    usable,
)
from clampstand.calculators.kit_totals import KitTotal, kit_totals
from clampstand.findings import Finding
from clampstand.model.days import day_of_the_week
from clampstand.model.kit import Item
from clampstand.model.lesson import TimetabledLesson
from clampstand.model.practical import Practical
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made, search_words
from clampstand.rendering.pages.orders import every_order, how_much, to_order
from clampstand.units import Quantity


@dataclass(frozen=True, slots=True)
class Prepared:
    """One lesson of the day, as it is put out.

    Args:
        lesson: the lesson.
        practical: what is done.
        room: the name of its room.
        totals: its kit for this class.
        sources: the sources it is given.
        begin: when preparing it must begin.
        takes: how long preparing it takes.
    """

    lesson: TimetabledLesson
    practical: Practical
    room: str
    totals: tuple[KitTotal, ...]
    sources: tuple[Wanted, ...]
    begin: dt.datetime
    takes: Quantity


@dataclass(frozen=True, slots=True)
class Shared:
    """An item several lessons of the day use, or one does: how many to have, and where they go.

    Args:
        item: the item.
        together: as many as any one period takes, spares shared; of what is used up, the whole day's.
        owned: how many there are to use, where that is known.
        goes: period, room and how many.
    """

    item: Item
    together: str
    owned: int | None
    goes: tuple[tuple[str, str, str], ...]


def days_page(contents: Contents) -> SitePage:
    """The days there are sheets for."""
    days = _by_day(contents)
    return made(
        "days/index.html",
        "Day sheets",
        "days",
        contents,
        days={
            day: [(one, contents.book.practicals[one.practical].title) for one in days[day]] for day in days
        },
        clashes={day: clashes(days[day], contents) for day in days},
        search=SearchWords(
            "What to put out, when to begin and what to order, for each day of the timetable.",
            "day sheet lessons prepare clash start",
        ),
        in_navigation=True,
    )


def day_pages(contents: Contents) -> Iterator[SitePage]:
    """A sheet for every day of the timetable."""
    days = _by_day(contents)
    dates = list(days)
    for number, date in enumerate(dates):
        following = dates[number + 1] if number + 1 < len(dates) else None
        prepared = [one for together in by_period(days[date]) for one in _prepared(together, contents)]
        yield made(
            f"days/{date.isoformat()}.html",
            f"Preparing for {day_of_the_week(date)}",
            "day",
            contents,
            date=date,
            periods=[(each[0].period, each[0].start, _of(each, prepared)) for each in by_period(days[date])],
            issue=[
                (each[0].period, each[0].start, [one for one in _of(each, prepared) if one.sources])
                for each in by_period(days[date])
                if any(one.sources for one in _of(each, prepared))
            ],
            begins=sorted(prepared, key=lambda one: (one.begin, one.lesson.id)),
            clashes=clashes(days[date], contents),
            shared=list(shared(days[date], contents)),
            orders=to_order(date, following, contents),
            awaited=[order for order in every_order(contents) if order.lesson.date == date],
            search=search_words(
                "; ".join(dict.fromkeys(one.practical.title for one in prepared)),
                "prepare",
                tags=("day sheet",),
            ),
        )


def _by_day(contents: Contents) -> Mapping[dt.date, Lessons]:
    lessons = known_lessons(contents.book)
    dates = dict.fromkeys(lesson.date for lesson in lessons)
    return {date: tuple(one for one in lessons if one.date == date) for date in dates}


def _of(together: Lessons, prepared: Sequence[Prepared]) -> list[Prepared]:
    ids = {lesson.id for lesson in together}
    return [one for one in prepared if one.lesson.id in ids]


def _prepared(together: Lessons, contents: Contents) -> Iterator[Prepared]:
    book = contents.book
    given = sources_for(together, book)
    for lesson in together:
        practical = book.practicals[lesson.practical]
        yield Prepared(
            lesson,
            practical,
            book.rooms[lesson.room].name if lesson.room in book.rooms else lesson.room,
            tuple(_added_up(kit_totals(practical, book, lesson.class_size))),
            tuple(wanted for wanted in given if wanted.lesson is lesson),
            start_by(lesson, book),
            set_up_length(lesson, book),
        )


def _added_up(totals: Iterable[KitTotal]) -> Iterator[KitTotal]:
    """What is put out once, though a list has a line for the pupils and another for the adults."""
    alike: dict[object, list[KitTotal]] = {}
    for number, total in enumerate(totals):
        line = total.line
        counted = (line.item, line.phase, line.made_here) if total.amount is None else number
        alike.setdefault(counted, []).append(total)
    for first, *others in alike.values():
        spare = first.line.spare + sum(other.line.spare for other in others)
        count = first.count + sum(other.count for other in others)
        line = first.line.model_copy(update={"spare": spare})
        yield replace(first, line=line, count=count) if others else first


def clashes(lessons: Sequence[TimetabledLesson], contents: Contents) -> list[Finding]:
    """What was found against the lessons of a day, stops first."""
    lines = {(lesson.spot.file, lesson.spot.route[0]) for lesson in lessons}
    found = [finding for finding in contents.findings if (finding.place.file, finding.place.line) in lines]
    return sorted(found, key=lambda finding: not finding.stops)


def shared(lessons: Lessons, contents: Contents) -> Iterator[Shared]:
    """Every item the day needs, by the place it is kept in."""
    book = contents.book
    needed = kit_for(lessons, book)
    known = [book.kit[name] for name in needed if name in book.kit]
    for item in sorted(known, key=lambda one: (one.kept_in or "", one.kept or "", one.name)):
        puts = needed[item.id]
        goes = tuple(_goes(puts))
        if item.consumable or any(put.total.amount is not None for put in puts):
            yield Shared(item, how_much(puts, spares=True), usable(item.id, book), goes)
        else:
            most = max(_at_once(of_period) for of_period in _periods(puts))
            yield Shared(item, str(most), usable(item.id, book), goes)


def _goes(puts: Sequence[Put]) -> Iterator[tuple[str, str, str]]:
    """Period, room and how many, one for each lesson though its list has several lines."""
    by_lesson: dict[str, list[Put]] = {}
    for put in puts:
        by_lesson.setdefault(put.lesson.id, []).append(put)
    for of_lesson in by_lesson.values():
        lesson = of_lesson[0].lesson
        yield lesson.period, lesson.room, how_much(of_lesson, spares=True)


def _periods(puts: Sequence[Put]) -> list[list[Put]]:
    by_name: dict[str, list[Put]] = {}
    for put in puts:
        by_name.setdefault(put.lesson.period, []).append(put)
    return list(by_name.values())


def _at_once(puts: Sequence[Put]) -> int:
    """How many lessons of one period take: what each needs, and the largest number of spares once."""
    return sum(put.without_spares for put in puts) + max(put.total.line.spare for put in puts)
