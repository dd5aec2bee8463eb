"""Whoever covers a lesson runs nothing with sources, high voltage or dry ice.

Why: a cover teacher has not rehearsed it, does not know the room, and is on no list of those who may.

Wrong:
    timetable:
      1: {teacher: T4, cover: yes}

Right:
    timetable:
      1: {teacher: T4, cover: no}

Whose: the department's own rule; in some places only named persons may use sources.
"""

from collections.abc import Iterator

from clampstand.calculators.day import at_once, lessons_to_come
from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import dangerous_supplies
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "cover-runs-nothing-dangerous"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "cover staff run no practical with sources, dangerous supplies or dry ice")


def check_book(book: Book) -> Iterator[Problem]:
    """Every lesson to come that is covered, against what is in its practical."""
    for lesson in lessons_to_come(book):
        dangers = list(_dangers(Lesson(book.practicals[lesson.practical], book))) if lesson.cover else []
        if dangers:
            has = " and ".join(dangers)
            yield Problem(
                lesson.at("cover"),
                f"{lesson.practical} {at_once(lesson)} is covered, and it has {has}",
                found=f"covered by {lesson.teacher}",
                needed="the teacher who is signed off for it, or another lesson",
                mend="name another practical for this lesson, or move it to when the teacher is back",
                whose=RULE,
            )


def _dangers(lesson: Lesson) -> Iterator[str]:
    if lesson.practical.sources:
        yield "a source"
    for used, output in dangerous_supplies(lesson):
        yield f"a {used.item.name} of {output.greatest_voltage}"
    kit = lesson.book.kit
    for name in sorted(lesson.practical.items):
        if name in kit and kit[name].turns_to_gas:
            yield kit[name].name
