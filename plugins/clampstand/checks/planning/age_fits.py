"""A class is old enough for its practical, and for handling sources where it is to handle them.

Why: what a practical asks of hands and attention was written for an age. For sources the age is a rule of the
department, and in some places the law.

Wrong:
    timetable:
      1: {age: 13}

Right:
    timetable:
      1: {age: 14}

Whose: the department's own rule, or the law of the place for handling sources.
"""

from collections.abc import Iterator

from clampstand.calculators.day import at_once, class_age, in_words, lessons_to_come
from clampstand.checks.meeting import MOVES
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import keeps, the_limit, whose
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson
from clampstand.model.practical import PHASES, Practical

ID = "age-fits"
SEVERITY = Severity.STOP
LIMIT = "radiation.handling-age"
RULE = Whose(Layer.LOCAL, "a practical is done with the ages it was written for")


def check_book(book: Book) -> Iterator[Problem]:
    """The youngest of every class to come."""
    for lesson in lessons_to_come(book):
        practical, age = book.practicals[lesson.practical], class_age(lesson, book)
        if age is None:
            known = ", ".join(book.department.youngest_in_year) or "none"
            message = f"nobody says how old a class of year {lesson.year} is"
            yield _problem(lesson, message, f"years known: {known}", RULE)
        elif age < practical.ages.youngest:
            message = f"{in_words(lesson)} {at_once(lesson)}: the youngest are {age}"
            yield _problem(lesson, message, f"ages {practical.ages}", RULE)
        else:
            yield from _handling(lesson, practical, age, book)


def _handling(lesson: TimetabledLesson, practical: Practical, age: int, book: Book) -> Iterator[Problem]:
    limit = the_limit(LIMIT, book)
    if limit is None or not isinstance(limit.value, int) or keeps(age, limit) or not _handles(practical):
        return
    message = f"{in_words(lesson)} {at_once(lesson)}: pupils of {age} are to handle a source"
    yield _problem(lesson, message, limit.in_words, whose(limit))


def _handles(practical: Practical) -> bool:
    """Whether pupils move a source in any step."""
    steps = (step for phase in PHASES for step in practical.steps(phase))
    return any(
        step.doers & {"pupils", "volunteer"} and any(getattr(step, how) for how in MOVES) for step in steps
    )


def _problem(lesson: TimetabledLesson, message: str, needed: str, rests_on: Whose) -> Problem:
    column = "age" if lesson.age is not None else "year"
    return Problem(
        lesson.at(column),
        message,
        found=f"{column} {lesson.age if lesson.age is not None else lesson.year}",
        needed=needed,
        mend="choose another practical for this class, or let the adults do the steps",
        whose=rests_on,
    )
