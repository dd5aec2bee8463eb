"""No flammable vapour is in a room when something that sparks or burns comes into it.

Why: each lesson is safe by itself. Vapour of alcohol lies over benches after its bottle has gone, and the
next thing switched on lights it.

Wrong:
    timetable:
      4: {like: 2, practical: high-tension-bench}
    kit:
      high-supply: {ignites: spark}

Right:
    timetable:
      4: {like: 2, practical: high-tension-bench, period: 3, start: "11:25"}
    kit:
      high-supply: {ignites: spark}

Whose: the department's own rule; the duty to keep vapour and ignition apart is law in most places.
"""

import datetime as dt
from collections.abc import Iterator

from clampstand.calculators.day import at_once, in_words, lessons_to_come
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import the_limit, whose
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson
from clampstand.units import Amount, Quantity, q

ID = "vapour-and-sparks-together"
SEVERITY = Severity.STOP
LIMIT = "fire.drying-time"
RULE = Whose(Layer.LOCAL, "flammable vapour and whatever can light it are not in one room")


def check_book(book: Book) -> Iterator[Problem]:
    """Every lesson to come with a flammable liquid, and what sparks in its room then or too soon after it."""
    lessons = lessons_to_come(book)
    by_room: dict[tuple[dt.date, str], list[TimetabledLesson]] = {}
    for lesson in lessons:
        by_room.setdefault((lesson.date, lesson.room), []).append(lesson)
    for there in by_room.values():
        vapours = [(lesson, name) for lesson in there for name in _with(lesson, book, "flammable_vapour")[:1]]
        sparks = [(lesson, name) for lesson in there for name in _with(lesson, book, "ignites")[:1]]
        for lesson, vapour in vapours:
            for other, spark in sparks:
                if other is not lesson and _too_soon(lesson, other, book):
                    yield _problem(lesson, vapour, other, spark, book)


def _with(lesson: TimetabledLesson, book: Book, quality: str) -> list[str]:
    """The items of a lesson in its room that have a quality: by their properties, never by their names."""
    lines = book.practicals[lesson.practical].kit
    items = [book.kit[line.item] for line in lines if line.item in book.kit and line.phase != "prepare"]
    return [item.name for item in items if getattr(item, quality)]


def _too_soon(lesson: TimetabledLesson, other: TimetabledLesson, book: Book) -> bool:
    """Whether another lesson begins before the vapour of this one is gone."""
    length = book.department.lesson.value + _airing(book)
    gone = lesson.begins + dt.timedelta(minutes=float(length.m_as("min")))
    return other.period == lesson.period or lesson.begins <= other.begins < gone


def _airing(book: Book) -> Quantity:
    limit = the_limit(LIMIT, book)
    return limit.value.value if limit is not None and isinstance(limit.value, Amount) else q("0 min")


def _problem(
    lesson: TimetabledLesson, vapour: str, other: TimetabledLesson, spark: str, book: Book
) -> Problem:
    limit = the_limit(LIMIT, book)
    return Problem(
        other.at("practical"),
        f"{in_words(other)} {at_once(other)} brings {spark} to the {vapour} of {lesson.practical}",
        found=f"{in_words(lesson)} at {lesson.start:%H:%M}; {in_words(other)} at {other.start:%H:%M}",
        needed="the lesson over and the room aired before anything sparks or burns",
        mend="move one of the two lessons to another room, or leave a period between them",
        whose=whose(limit) if limit else RULE,
        related=((lesson.at("practical"), f"brings {vapour} into the room"),),
    )
