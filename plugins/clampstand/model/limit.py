"""A limit: what it holds for, its value, whose it is, where it was read and when it must be read again."""

from functools import cached_property
from typing import ClassVar, Literal

from pydantic import model_validator

from clampstand.findings import Layer
from clampstand.model.base import (
    Age,
    AnyAmount,
    CalendarTime,
    Count,
    Day,
    Definition,
    Entry,
    Id,
    Interval,
    Line,
    Many,
    Time,
    Words,
    fault,
)
from clampstand.units import Amount

_IN_WORDS = {
    "at_most": "at most {}",
    "less_than": "less than {}",
    "at_least": "at least {}",
    "more_than": "more than {}",
    "at_most_count": "at most {}",
    "at_least_age": "at least {} years old",
    "at_most_interval": "at least once in {}",
}
"""Every way to state a limit, as a person says it."""


class AppliesTo(Definition):
    """What a limit holds for; a key left out holds for everything."""

    current: Literal["dc", "ac"] | None = None
    drive: Literal["mains", "belt"] | None = None
    role: Line | None = None
    nuclide: Id | None = None
    form: Line | None = None
    age_under: Age | None = None
    age_from: Age | None = None
    made_before: Day | None = None


class Limit(Entry):
    """One limit of one pack. Exactly one comparator; a value without citation and date cannot be written."""

    shelf: ClassVar[str] = "limits"

    key: Id
    """What is limited, the same word in every pack: ``radiation.hand-to-source``."""
    title: Line
    layer: Literal["law", "guidance", "local rule"]
    at_most: AnyAmount | None = None
    less_than: AnyAmount | None = None
    at_least: AnyAmount | None = None
    more_than: AnyAmount | None = None
    at_most_count: Count | None = None
    """For things and people, which have no unit: sources out at once."""
    at_least_age: Age | None = None
    """In whole years, as birthdays are counted."""
    at_most_interval: CalendarTime | None = None
    """For what must be done again by the calendar: ``24 months`` between two tests."""
    applies_to: AppliesTo = AppliesTo()
    averaged_over: Time | None = None
    combine: Literal["each", "sum of fractions"] = "each"
    """Whether each thing keeps to it by itself, or all of them by the sum of their parts of it."""
    with_progeny: Many[Id] = ()
    """The progeny in equilibrium that a value for a nuclide holds for too."""
    citation: Id
    provision: Line | None = None
    read_on: Day
    check_again_by: Day
    verified: Literal["yes", "no"] = "yes"
    """``no`` for a value from memory or from a secondary page; every page that uses it says so."""
    waivable: Literal["yes", "no"] = "yes"
    supersedes: Id | None = None
    """The pack whose limit of the same key and circumstances this one takes the place of."""
    note: Words | None = None

    @model_validator(mode="after")
    def _one_comparator(self) -> "Limit":
        if len(self._stated()) != 1:
            raise fault(
                "a limit needs one of " + ", ".join(_IN_WORDS),
                "write exactly one of them",
            )
        return self

    def _stated(self) -> dict[str, Amount | Interval | int]:
        return {name: value for name in _IN_WORDS if (value := getattr(self, name)) is not None}

    @cached_property
    def comparator(self) -> str:
        """Which of the comparators it uses, as ``at_most`` or ``at_most_count``."""
        return next(iter(self._stated()))

    @cached_property
    def value(self) -> Amount | Interval | int:
        """The limiting value: a quantity, or for a count or an age an int, or a time by the calendar."""
        return next(iter(self._stated().values()))

    @property
    def amount(self) -> Amount | None:
        """The limiting value where it is a quantity; None for a count, an age or an interval."""
        return self.value if isinstance(self.value, Amount) else None

    @property
    def in_words(self) -> str:
        """The limit as a person says it: ``at least 100 mm``."""
        return _IN_WORDS[self.comparator].format(self.value)

    @property
    def holds_for(self) -> tuple[str, str]:
        """Its key and circumstances."""
        return self.key, str(self.applies_to)

    @property
    def instead_of(self) -> tuple[str | None, str, str]:
        """The pack, key and circumstances of the limit it takes the place of."""
        return (self.supersedes, *self.holds_for)

    @property
    def whose(self) -> Layer:
        """Its layer: law, guidance or local rule."""
        return Layer(self.layer)


class Pack(Entry):
    """A pack of limits: one jurisdiction's, or the department's own rules."""

    shelf: ClassVar[str] = "packs"

    pack: Id
    title: Line
    note: Words | None = None
    limits: tuple[Limit, ...] = ()
