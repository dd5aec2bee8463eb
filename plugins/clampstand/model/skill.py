"""A reusable technique that people rehearse and are signed off for."""

from typing import ClassVar

from clampstand.model.base import CalendarTime, Entry, Id, Line, Many, Words
from clampstand.model.practical import Fault, Review
from clampstand.model.step import Step


class Skill(Entry):
    """A technique: what good looks like, its steps, its usual faults and what a sign-off looks for."""

    shelf: ClassVar[str] = "skills"

    title: Line
    aim: Line
    good_looks_like: tuple[Line, ...]
    kit: Many[Id] = ()
    steps: tuple[Step, ...]
    usual_faults: tuple[Fault, ...] = ()
    sign_off: tuple[Line, ...]
    lasts: CalendarTime
    """How long a sign-off holds."""
    search: Many[Line] = ()
    emergency: Many[Id] = ()
    note: Words | None = None
    review: Review
