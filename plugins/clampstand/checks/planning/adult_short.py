"""Every lesson has the adults its practical asks for, and nobody is in two rooms at once.

Why: a second adult is asked for because the first has both hands full. One who is next door is no second
adult.

Wrong:
    source bench:
      needs: {adults: 2}

Right:
    source bench:
      needs: {adults: 2}
    timetable:
      1: {second adult: TEC1}

Whose: the department's own rule; adequate supervision is law in most places.
"""

from collections.abc import Iterator

from clampstand.calculators.day import Lessons, at_once, by_period, in_words, lessons_to_come
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson

ID = "adult-short"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "as many adults as the practical asks for are in the room throughout")


def check_book(book: Book) -> Iterator[Problem]:
    """Every lesson to come, and every pair of lessons at one time in different rooms."""
    for together in by_period(lessons_to_come(book)):
        for lesson in together:
            needed = book.practicals[lesson.practical].needs.adults
            if len(lesson.adults) < needed:
                yield _too_few(lesson, needed)
        yield from _in_two_rooms(together)


def _too_few(lesson: TimetabledLesson, needed: int) -> Problem:
    there = ", ".join(lesson.adults)
    return Problem(
        lesson.at("practical"),
        f"{in_words(lesson)} {at_once(lesson)} asks for {needed} adults and has {len(lesson.adults)}",
        found=there,
        needed=f"{needed} adults",
        mend="name an observer or a second adult, or another practical",
        whose=RULE,
    )


def _in_two_rooms(together: Lessons) -> Iterator[Problem]:
    first: dict[str, TimetabledLesson] = {}
    for lesson in together:
        for person in lesson.adults:
            other = first.setdefault(person, lesson)
            if other.room != lesson.room:
                yield Problem(
                    lesson.at(_column(person, lesson)),
                    f"{person} is in {other.room} and in {lesson.room} {at_once(lesson)}",
                    found=f"{in_words(other)}; {in_words(lesson)}",
                    needed="one room at a time",
                    mend="name somebody else for one of the two lessons",
                    whose=RULE,
                    related=((other.at(_column(person, other)), "named here too"),),
                )


def _column(person: str, lesson: TimetabledLesson) -> str:
    return next(name for name in ("teacher", "observer", "second_adult") if getattr(lesson, name) == person)
