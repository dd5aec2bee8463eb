"""Every lesson is in a room its practical may be run in, that has what it needs and is free.

Why: a room is part of a practical: its air, its size, its benches and what hangs on its wall. A source cannot
be kept from people who come and go through somebody else's lesson.

Wrong:
    timetable:
      1: {room: cellar}

Right:
    timetable:
      1: {room: hall}

Whose: the department's own rule; a suitable workplace is law in most places.
"""

from collections.abc import Iterator

from clampstand.calculators.day import Lessons, at_once, by_period, in_words, lessons_to_come
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson

ID = "room-cannot"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a practical is run in the rooms it names, with what it needs, one class in a room")


def check_book(book: Book) -> Iterator[Problem]:
    """Every lesson to come: its room, the room's features, and who else is in it."""
    for together in by_period(lessons_to_come(book)):
        for lesson in together:
            yield from _not_here(lesson, book)
        yield from _taken(together)


def _not_here(lesson: TimetabledLesson, book: Book) -> Iterator[Problem]:
    practical = book.practicals[lesson.practical]
    rooms = practical.where.get("run", ())
    if rooms and lesson.room not in rooms:
        yield Problem(
            lesson.at("room"),
            f"{lesson.practical} cannot be run in {lesson.room} ({at_once(lesson)})",
            found=lesson.room,
            needed=" or ".join(rooms),
            mend=f"swap rooms: it needs {' or '.join(rooms)}",
            whose=RULE,
            related=((practical.at("where", "run"), "where it may be run"),),
        )
        return
    room = book.rooms.get(lesson.room)
    lacks = [f for f in practical.needs.room.features if room is not None and f not in room.features]
    if lacks:
        yield Problem(
            lesson.at("room"),
            f"{lesson.room} has no {' and no '.join(lacks)}, which {lesson.practical} needs",
            found=", ".join(room.features) if room else "",
            needed=", ".join(practical.needs.room.features),
            mend="swap rooms, or correct the list of the room's features",
            whose=RULE,
            related=((practical.at("needs", "room", "features"), "what it needs"),),
        )


def _taken(together: Lessons) -> Iterator[Problem]:
    """Lessons in a room where another teacher has one. One teacher's class may do two practicals in turn."""
    first: dict[str, TimetabledLesson] = {}
    for lesson in together:
        other = first.setdefault(lesson.room, lesson)
        if other.teacher != lesson.teacher:
            yield Problem(
                lesson.at("room"),
                f"{lesson.room} is taken twice {at_once(lesson)}",
                found=f"{in_words(other)}; {in_words(lesson)}",
                needed="one class in a room",
                mend="move one of the two lessons to another room or period",
                whose=RULE,
                related=((other.at("room"), "taken here too"),),
            )
