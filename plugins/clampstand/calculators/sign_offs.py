"""What somebody is signed off for on a day: the newest entry holds until its time is over."""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.limits import the_limit
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.record import SignOff

ALONE = 4
"""The level from which somebody runs a practical alone and may observe another."""

INTERVAL = "planning.sign-off-interval"

Subject = tuple[str, str]
"""Shelf and id: a practical or a skill."""


@dataclass(frozen=True, slots=True)
class Held:
    """What somebody holds for one practical or skill.

    Args:
        entry: the newest sign-off.
        ends: its last day; None where no limit and no skill says how long one holds.
    """

    entry: SignOff
    ends: dt.date | None

    def level_on(self, day: dt.date) -> int:
        """The level on a day: none once it has ended. On its last day it still holds."""
        return 0 if self.ends is not None and self.ends < day else self.entry.level


def held(person: str, subject: Subject, day: dt.date, book: Book) -> Held | None:
    """What somebody holds for a subject on a day, ended or not; None where they were never signed off."""
    until = [entry for entry in book.sign_offs_by_whom.get((person, subject), ()) if entry.date <= day]
    if not until:
        return None
    newest = max(until, key=lambda entry: (entry.date, -entry.level))
    return Held(newest, ends(newest, book))


def ends(entry: SignOff, book: Book) -> dt.date | None:
    """The last day a sign-off holds: the skill or the rule in force says how long, the shorter counts."""
    length = holds_for(entry.subject, entry.date, book)
    return None if length is None else length.after(entry.date)


def holds_for(subject: Subject, day: dt.date, book: Book) -> Interval | None:
    """How long a sign-off of a day holds: the shorter of what the skill and the rule in force say."""
    shelf, name = subject
    lengths = [book.skills[name].lasts] if shelf == "skills" and name in book.skills else []
    limit = the_limit(INTERVAL, book)
    if limit is not None and isinstance(limit.value, Interval):
        lengths.append(limit.value)
    return min(lengths, key=lambda length: length.after(day), default=None)


def newest_sign_offs(book: Book) -> Iterator[Held]:
    """The newest sign-off of everybody for everything, on the department's day."""
    who = dict.fromkeys((entry.person, entry.subject) for entry in book.sign_offs.values())
    for person, subject in who:
        holds = held(person, subject, book.department.computed_for, book)
        if holds is not None:
            yield holds


def needed_for(practical_id: str, book: Book) -> tuple[Subject, ...]:
    """What somebody who runs a practical must be signed off for: itself and the skills it asks for."""
    skills = book.practicals[practical_id].needs.skills
    return (("practicals", practical_id), *(("skills", skill) for skill in skills))


def lacking(
    person: str, practical_id: str, day: dt.date, book: Book
) -> Iterator[tuple[Subject, Held | None]]:
    """What keeps somebody from running a practical alone on a day, each with what they hold of it."""
    for subject in needed_for(practical_id, book):
        holds = held(person, subject, day, book)
        if holds is None or holds.level_on(day) < ALONE:
            yield subject, holds


def level_for(person: str, practical_id: str, day: dt.date, book: Book) -> int | None:
    """The lowest level somebody has of all that a practical asks for; None where one is missing.

    What has ended counts as level 0, as :meth:`Held.level_on` has it.
    """
    holds = [held(person, subject, day, book) for subject in needed_for(practical_id, book)]
    levels = [one.level_on(day) for one in holds if one is not None]
    return min(levels) if len(levels) == len(holds) else None
