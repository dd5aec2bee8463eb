"""The lessons of a day as the preparation room sees them: periods, kit in all, sources given out."""

import datetime as dt
from collections import deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from clampstand.calculators.clock import phase_length
from clampstand.calculators.kit_totals import KitTotal, total_of
from clampstand.model.book import Book
from clampstand.model.lesson import TimetabledLesson
from clampstand.model.practical import Phase, Practical, SourceSlot
from clampstand.units import Quantity, number_in

Lessons = tuple[TimetabledLesson, ...]


def known_lessons(book: Book) -> Lessons:
    """Every lesson of the timetable whose practical is in the handbook, by its time."""
    return tuple(lesson for lesson in book.timetable.values() if lesson.practical in book.practicals)


def lessons_to_come(book: Book) -> Lessons:
    """The lessons of the department's day and after it. What has been taught is not judged any more."""
    return tuple(one for one in known_lessons(book) if one.date >= book.department.computed_for)


def by_period(lessons: Sequence[TimetabledLesson]) -> Iterator[Lessons]:
    """The lessons that are at the same time: of one date and one period."""

    def when(lesson: TimetabledLesson) -> tuple[dt.date, str]:
        return lesson.date, lesson.period

    for _, together in groupby(sorted(lessons, key=lambda one: (*when(one), one.begins, one.id)), key=when):
        yield tuple(together)


def at_once(lesson: TimetabledLesson) -> str:
    """When a lesson is, in words."""
    return f"in period {lesson.period} on {lesson.date}"


def in_words(lesson: TimetabledLesson) -> str:
    """A lesson, in words: its practical, room and teacher."""
    return f"{lesson.practical} in {lesson.room} with {lesson.teacher}"


def class_age(lesson: TimetabledLesson, book: Book) -> int | None:
    """The age of the youngest in the class; None for a school year the department does not know."""
    return lesson.age if lesson.age is not None else book.department.youngest_in_year.get(lesson.year or "")


def set_up_length(lesson: TimetabledLesson, book: Book) -> Quantity:
    """How long it takes to prepare a lesson and set it up."""
    practical = book.practicals[lesson.practical]
    whole: Quantity = phase_length(practical, "prepare") + phase_length(practical, "set_up")
    return whole


def start_by(lesson: TimetabledLesson, book: Book) -> dt.datetime:
    """When preparing a lesson must begin, so that it is set up when the class comes."""
    return lesson.begins - dt.timedelta(minutes=number_in(set_up_length(lesson, book), "min"))


@dataclass(frozen=True, slots=True)
class Put:
    """What one lesson needs of one item: a line of its kit list, for this class."""

    lesson: TimetabledLesson
    total: KitTotal

    @property
    def without_spares(self) -> int:
        """How many the lesson cannot do without."""
        return self.total.count - self.total.line.spare


def kit_for(
    lessons: Sequence[TimetabledLesson], book: Book, but: Phase | None = None
) -> Mapping[str, list[Put]]:
    """What lessons need, by item, in the order the lessons ask.

    Args:
        lessons: the lessons.
        book: the content.
        but: a phase whose own kit is left out.
    """
    needed: dict[str, list[Put]] = {}
    for lesson in lessons:
        practical: Practical = book.practicals[lesson.practical]
        for line in practical.kit:
            if not line.made_here and (line.phase is None or line.phase != but):
                total = total_of(line, practical, book, lesson.class_size)
                needed.setdefault(line.item, []).append(Put(lesson, total))
    return needed


def usable(item_id: str, book: Book) -> int | None:
    """How many of an item there are to use; None where nobody wrote down how many are owned.

    Of what has a list of its units, those in use that are no decoys; of anything else, those owned less one
    for every fault nobody has cleared.
    """
    units = book.units_of(item_id)
    if units:
        return sum(unit.status == "in use" and not unit.decoy for unit in units)
    owned = book.kit[item_id].owned if item_id in book.kit else None
    if owned is None:
        return None
    return owned - sum(fault.thing == item_id and fault.cleared is None for fault in book.faults.values())


@dataclass(frozen=True, slots=True)
class Wanted:
    """A source slot of one lesson, which sources in use may fill it, and which one does."""

    lesson: TimetabledLesson
    slot: SourceSlot
    choices: tuple[str, ...]
    given: str | None = None


def sources_for(together: Sequence[TimetabledLesson], book: Book) -> tuple[Wanted, ...]:
    """Which source each slot of lessons at one time gets, so that as many as possible get one.

    A maximum matching by augmenting paths: a lesson is moved to its second choice
    where that leaves the first to one that has no other.
    """
    wanted = [
        Wanted(lesson, slot, tuple(name for name in slot.one_of if _in_use(name, book)))
        for lesson in together
        for slot in book.practicals[lesson.practical].sources
    ]
    given: dict[int, str] = {}
    holder: dict[str, int] = {}
    for number in range(len(wanted)):
        _give(number, wanted, given, holder)
    return tuple(Wanted(w.lesson, w.slot, w.choices, given.get(n)) for n, w in enumerate(wanted))


def _in_use(source_id: str, book: Book) -> bool:
    return source_id in book.sources and book.sources[source_id].status == "in use"


def _give(start: int, wanted: Sequence[Wanted], given: dict[int, str], holder: dict[str, int]) -> None:
    """Find a source for one slot, moving others to another choice of theirs where that helps."""
    asked_by: dict[str, int] = {}
    waiting = deque([start])
    while waiting:
        slot = waiting.popleft()
        for source in wanted[slot].choices:
            if source in asked_by:
                continue
            asked_by[source] = slot
            if source not in holder:
                _pass_on(source, start, asked_by, given, holder)
                return
            waiting.append(holder[source])


def _pass_on(
    free: str, start: int, asked_by: dict[str, int], given: dict[int, str], holder: dict[str, int]
) -> None:
    """Give the free source to whoever asked for it, and what they had to whoever asked for that."""
    source: str | None = free
    while source is not None:
        slot = asked_by[source]
        before = given.get(slot)
        given[slot], holder[source] = source, slot
        source = None if slot == start else before
