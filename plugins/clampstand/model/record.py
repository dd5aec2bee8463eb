"""What people write down with a spreadsheet: one row of each table, by role code and never by name."""

from typing import ClassVar, Literal

from pydantic import Field, model_validator

from clampstand.model.base import Activity, Current, Day, Entry, Id, YesNo, fault
from clampstand.model.people import ClockTime, Code, Level, Remark


class LeakTestDone(Entry):
    """One wipe test of one source. The newest supersedes what the register says."""

    shelf: ClassVar[str] = "leak_tests"

    date: Day
    source: Id
    result: Literal["pass", "fail"]
    found: Activity | None = None
    """The activity on the wipe; left out when there was none above what could be seen."""
    could_see: Activity = Field(alias="could see")
    """The smallest activity this instrument could have seen in this time."""
    instrument: Remark
    by: Code
    note: Remark | None = None


class SourceCount(Entry):
    """One source looked for in one count of the store: a count is of identities, not a number."""

    shelf: ClassVar[str] = "source_counts"

    date: Day
    source: Id
    seen: YesNo
    position: Remark
    condition: Remark | None = None
    by: Code
    second: Code | None = None
    """Who looked too, when anything was wrong."""
    note: Remark | None = None


class Inspection(Entry):
    """One test of one supply. The newest supersedes what the list of supplies says."""

    shelf: ClassVar[str] = "inspections"

    date: Day
    unit: Id
    result: Literal["pass", "fail"]
    measured_current: Current | None = Field(default=None, alias="measured current")
    by: Code
    note: Remark | None = None


class SignOff(Entry):
    """How far somebody has come with a practical or a skill.

    Levels: 0 has read it, 1 has watched, 2 has rehearsed, 3 runs it observed, 4 runs it alone,
    5 may train others.
    """

    shelf: ClassVar[str] = "sign_offs"

    date: Day
    person: Code
    practical: Id | None = None
    skill: Id | None = None
    level: Level
    by: Code
    note: Remark | None = None

    @model_validator(mode="after")
    def _of_one_thing_by_another(self) -> "SignOff":
        if (self.practical is None) == (self.skill is None):
            raise fault("a sign-off is for a practical or for a skill", "fill one of the two columns")
        if self.person == self.by:
            raise fault("nobody signs themselves off", "write the code of whoever saw it")
        return self

    @property
    def subject(self) -> tuple[str, str]:
        """Shelf and id of what it is for."""
        return ("practicals", self.practical) if self.practical else ("skills", self.skill or "")


class SourceUse(Entry):
    """A source out of the store and, once it is filled in, back again."""

    shelf: ClassVar[str] = "uses"

    date: Day
    period: Remark
    source: Id
    practical: Id
    room: Id
    out: ClockTime
    out_by: Code = Field(alias="out by")
    back: ClockTime | None = None
    back_by: Code | None = Field(default=None, alias="back by")
    condition: Remark | None = None
    note: Remark | None = None

    @model_validator(mode="after")
    def _back_by_somebody_and_later(self) -> "SourceUse":
        if (self.back is None) != (self.back_by is None):
            raise fault("this entry is half closed", "write both when it came back and who brought it")
        if self.back is not None and self.back <= self.out:
            raise fault("it came back before it went out", "look at the two times")
        return self


class FaultReport(Entry):
    """Something found faulty. It is out of use until somebody who may do so clears it."""

    shelf: ClassVar[str] = "faults"

    date: Day
    thing: Id
    """A source, a supply or an item of the kit."""
    fault: Remark
    by: Code
    cleared: Day | None = None
    cleared_by: Code | None = Field(default=None, alias="cleared by")
    note: Remark | None = None

    @model_validator(mode="after")
    def _cleared_by_somebody_and_later(self) -> "FaultReport":
        if (self.cleared is None) != (self.cleared_by is None):
            raise fault("this fault is half cleared", "write both when and by whom, or neither")
        if self.cleared is not None and self.cleared < self.date:
            raise fault("it was cleared before it was found", "look at the two dates")
        return self


class NearMiss(Entry):
    """Something that nearly went wrong, and what was changed so that it does not again."""

    shelf: ClassVar[str] = "near_misses"

    date: Day
    practical: Id
    severity: Literal["slight", "severe"]
    what: Remark
    by: Code
    changed: Remark | None = None
    closed: Day | None = None
    closed_by: Code | None = Field(default=None, alias="closed by")

    @model_validator(mode="after")
    def _closed_with_a_change(self) -> "NearMiss":
        written = [self.closed is not None, self.closed_by is not None]
        if any(written) and not all((*written, self.changed)):
            raise fault("this report is half closed", "write when, by whom and what was changed")
        if self.closed is not None and self.closed < self.date:
            raise fault("it was closed before it happened", "look at the two dates")
        return self
