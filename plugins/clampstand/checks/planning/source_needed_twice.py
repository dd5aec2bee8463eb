"""No source is needed by two lessons at the same time.

Why: it is found out by somebody running down a corridor with a source, or by a lesson that takes whatever
else is in the store.

Wrong:
    timetable:
      4: {like: 1, room: hall, teacher: T2}
      5: {like: 1, room: attic, teacher: T4}

Right:
    timetable:
      4: {like: 1, room: hall, teacher: T2}

Whose: this handbook; a source that is accounted for is law in most places.
"""

from collections.abc import Iterator, Sequence

from clampstand.calculators.day import Wanted, at_once, by_period, in_words, lessons_to_come, sources_for
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "source-needed-twice"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a source is in one place at a time")


def check_book(book: Book) -> Iterator[Problem]:
    """Every period to come; a lesson may take its second choice to leave another its only one."""
    for together in by_period(lessons_to_come(book)):
        wanted = sources_for(together, book)
        for one in wanted:
            if one.given is None and one.choices:
                yield _problem(one, wanted)


def _problem(one: Wanted, wanted: Sequence[Wanted]) -> Problem:
    lesson = one.lesson
    others = [other for other in wanted if other.given in one.choices]
    sources = " or ".join(one.choices)
    taken = "; ".join(f"{other.given} is for {in_words(other.lesson)}" for other in others)
    return Problem(
        lesson.at("practical"),
        f"{in_words(lesson)} needs {sources} {at_once(lesson)}, and so does another lesson",
        found=taken,
        needed=f"{sources}, free in period {lesson.period}",
        mend="swap the period of one lesson, or let the practical name another source that will do",
        whose=RULE,
        related=tuple((other.lesson.at("practical"), f"takes {other.given}") for other in others),
    )
