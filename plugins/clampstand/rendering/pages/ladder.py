"""Who may run a practical: the levels of sign-off, and where everybody who could lead it stands today."""

from dataclasses import dataclass

from clampstand.calculators.sign_offs import ALONE, level_for
from clampstand.model.people import Duty
from clampstand.model.practical import Practical
from clampstand.rendering.contents import Contents

LEVELS = (
    ("has read the page", "watch"),
    ("has watched it", "rehearse it without a class"),
    ("has rehearsed it", "run it a first time, with an observer"),
    ("runs it observed", "run it with an observer, until that one signs for running it alone"),
    ("runs it alone", "run it, and observe others"),
    ("trains others", "run it, observe others and train them"),
)
"""For each level from 0: how far somebody has come, and what they may do next."""


@dataclass(frozen=True, slots=True)
class Rung:
    """Where somebody stands, in words.

    Args:
        code: whom, by code.
        role: what they are here.
        level: the lowest level of what is asked for; None where they were never signed off for some of it.
    """

    code: str
    role: str
    level: int | None

    @property
    def may(self) -> str:
        """Whether they may run it today."""
        if self.level is None or self.level < _OBSERVED:
            return "not yet"
        return "alone" if self.level >= ALONE else "observer needed"


_OBSERVED = 2
"""The level from which somebody may stand before a class with an observer."""


_TEACHING: frozenset[Duty] = frozenset({"teach", "cover"})
_TECHNICAL: frozenset[Duty] = frozenset({"prepare", "count", "test"})
"""The duties of those who could lead a practical, as it is led by a teacher or by a technician."""


def ladder(practical: Practical, contents: Contents) -> tuple[Rung, ...]:
    """Everybody who could lead it, in the order of the list of people."""
    book = contents.book
    may_lead = _TECHNICAL if practical.led_by == "technician" else _TEACHING
    return tuple(
        Rung(code, person.role, level_for(code, practical.id, contents.day, book))
        for code, person in book.people.items()
        if may_lead & set(person.may)
    )
