"""A lesson of the timetable: which practical, when, where, with whom and for whom."""

import datetime as dt
from typing import ClassVar

from pydantic import Field, model_validator

from clampstand.model.base import Count, Day, Entry, Id, YesNo, fault
from clampstand.model.people import ClockTime, Code, Remark


class TimetabledLesson(Entry):
    """One lesson to prepare for."""

    shelf: ClassVar[str] = "timetable"

    date: Day
    period: Remark
    start: ClockTime
    room: Id
    practical: Id
    teacher: Code
    class_size: Count = Field(alias="class size")
    age: Count | None = None
    """The age of the youngest in the class."""
    year: Remark | None = None
    """The class's school year, where the department says how old the youngest of each year are."""
    cover: YesNo
    """Whether the teacher stands in for another."""
    observer: Code | None = None
    second_adult: Code | None = Field(default=None, alias="second adult")

    @model_validator(mode="after")
    def _knows_how_old_the_class_is(self) -> "TimetabledLesson":
        if (self.age is None) == (self.year is None):
            raise fault("how old the class is must be known", "fill either age or year, not both")
        if self.teacher in (self.observer, self.second_adult):
            raise fault("the teacher is named twice", "name another adult, or leave that cell empty")
        return self

    @property
    def adults(self) -> tuple[str, ...]:
        """The codes of every adult in the room, each once."""
        named = (self.teacher, self.observer, self.second_adult)
        return tuple(dict.fromkeys(code for code in named if code))

    @property
    def begins(self) -> dt.datetime:
        """The moment it begins."""
        return dt.datetime.combine(self.date, self.start)
