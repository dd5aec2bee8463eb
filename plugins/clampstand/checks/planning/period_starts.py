"""A period begins at one time, and no period begins before the one before it is over.

Why: what two lessons need at once is found by their period. A wrong hour hides a clash, and every start-by
time on the day's sheet is wrong with it.

Wrong:
    timetable:
      2: {start: "09:55"}

Right:
    timetable:
      2: {start: "10:00"}

Whose: this handbook: the day's sheet rests on it.
"""

import datetime as dt
from collections.abc import Iterator
from itertools import groupby, pairwise

from clampstand.calculators.day import known_lessons
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson

ID = "period-starts"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "lessons of one period begin together, and periods do not overlap")


def check_book(book: Book) -> Iterator[Problem]:
    """The lessons of every date, in the order they begin."""
    length = dt.timedelta(minutes=float(book.department.lesson.value.m_as("min")))
    for _, of_day in groupby(known_lessons(book), key=lambda lesson: lesson.date):
        in_order = sorted(of_day, key=lambda lesson: (lesson.begins, lesson.id))
        first: dict[str, TimetabledLesson] = {}
        for lesson in in_order:
            other = first.setdefault(lesson.period, lesson)
            if other.start != lesson.start:
                yield _problem(lesson, other, f"period {lesson.period} begins at two times on {lesson.date}")
        for one, after in pairwise(first.values()):
            if after.begins < one.begins + length:
                yield _problem(after, one, f"period {after.period} begins before period {one.period} is over")


def _problem(lesson: TimetabledLesson, other: TimetabledLesson, message: str) -> Problem:
    return Problem(
        lesson.at("start"),
        message,
        found=f"{lesson.start:%H:%M}; period {other.period} begins at {other.start:%H:%M}",
        needed="one start for a period, and a whole lesson between two",
        mend="correct the start or the period of one of the two",
        whose=RULE,
        related=((other.at("start"), "the other lesson"),),
    )
