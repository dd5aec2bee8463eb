"""The lessons of one period need no more of an item than there are to use.

Why: when a high-voltage supply is missing, somebody reaches for the next thing that looks like it. An
ordinary supply drives enough current to kill.

Wrong:
    timetable:
      4: {like: 3, room: hall, teacher: T2}
      5: {like: 3, room: attic, teacher: T4}
    kit:
      field-plates: {owned: 9}
      shorting-rod: {owned: 9}

Right:
    timetable:
      4: {like: 3, room: hall, teacher: T2}
    kit:
      field-plates: {owned: 9}
      shorting-rod: {owned: 9}

Whose: this handbook: a kit list is a promise that the kit is there.
"""

from collections.abc import Iterator

from clampstand.calculators.day import Put, at_once, by_period, in_words, kit_for, lessons_to_come, usable
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "supplies-short"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what the lessons of a period need is there, spares aside")


def check_book(book: Book) -> Iterator[Problem]:
    """Every period to come: what its lessons need of each item, without spares, against what is usable."""
    for together in by_period(lessons_to_come(book)):
        for item_id, puts in kit_for(together, book, but="prepare").items():
            counted = [put for put in puts if put.total.amount is None]
            there, needed = usable(item_id, book), sum(put.without_spares for put in counted)
            if counted and there is not None and needed > there and not _is_used_up(item_id, book):
                yield _problem(item_id, counted, there, needed, book)


def _is_used_up(item_id: str, book: Book) -> bool:
    return item_id in book.kit and book.kit[item_id].consumable


def _problem(item_id: str, puts: list[Put], there: int, needed: int, book: Book) -> Problem:
    last = puts[-1].lesson
    name = book.kit[item_id].many if item_id in book.kit else item_id
    return Problem(
        last.at("practical"),
        f"{name}: {needed} are needed {at_once(last)} and there are {there} to use",
        found="; ".join(f"{put.without_spares} for {in_words(put.lesson)}" for put in puts),
        needed=f"at most {there}",
        mend="swap the period of one lesson, mend what is faulty, or buy more; use nothing else in its place",
        whose=RULE,
        related=tuple((put.lesson.at("practical"), f"needs {put.without_spares}") for put in puts[:-1]),
    )
