"""A timetabled teacher is signed off to run the practical alone, or somebody who is observes.

Why: what is dangerous is learnt by watching, rehearsing and being watched. Reading the page is the first step
of these, not the last, and what was learnt fades when it is not used.

Wrong:
    timetable:
      1: {teacher: T3}

Right:
    timetable:
      1: {teacher: T3, observer: T1}

Whose: the department's own rule; the duty to train and supervise is law in many places.
"""

from collections.abc import Iterator

from clampstand.calculators.day import at_once, lessons_to_come
from clampstand.calculators.sign_offs import ALONE, Held, Subject, lacking
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson

ID = "lesson-teacher-signed-off"
SEVERITY = Severity.STOP
RULE = Whose(
    Layer.LOCAL, f"whoever runs a practical is at level {ALONE} for it and its skills, or is observed by one"
)


def check_book(book: Book) -> Iterator[Problem]:
    """Every lesson to come: what its teacher lacks, its observer must have."""
    for lesson in lessons_to_come(book):
        lacks = list(lacking(lesson.teacher, lesson.practical, lesson.date, book))
        if not lacks:
            continue
        watches = lesson.observer
        if watches is None:
            yield _problem(lesson, lesson.teacher, lacks, "teacher", "and nobody observes")
            continue
        too = dict(lacking(watches, lesson.practical, lesson.date, book))
        both = [(subject, too[subject]) for subject, _ in lacks if subject in too]
        if both:
            yield _problem(lesson, watches, both, "observer", f"who is to observe {lesson.teacher}")


def _problem(
    lesson: TimetabledLesson, person: str, lacks: list[tuple[Subject, Held | None]], column: str, and_so: str
) -> Problem:
    told = ", ".join(_said(subject, holds, lesson) for subject, holds in lacks)
    related: tuple[tuple[Spot, str], ...] = tuple(
        (holds.entry.at("level"), f"the newest sign-off of {person} for {subject[1]}")
        for subject, holds in lacks
        if holds is not None
    )
    return Problem(
        lesson.at(column),
        f"{lesson.practical} {at_once(lesson)}: {person} is {told}, {and_so}",
        found=told,
        needed=f"level {ALONE} for the practical and each of its skills, or an observer who has it",
        mend="name an observer or another teacher, or rehearse it, sign it off and enter that",
        whose=RULE,
        related=related,
    )


def _said(subject: Subject, holds: Held | None, lesson: TimetabledLesson) -> str:
    if holds is None:
        return f"not signed off for {subject[1]}"
    if holds.ends is not None and holds.ends < lesson.date:
        return f"no longer signed off for {subject[1]}, since {holds.ends}"
    return f"at level {holds.entry.level} for {subject[1]}"
