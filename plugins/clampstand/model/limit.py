"""A limit: what it holds for, its value, whose it is, where it was read and when it must be read again."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Annotated, ClassVar, Literal

from pydantic import WithJsonSchema, model_validator
from pydantic_core import PydanticCustomError

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
    age_from,
    any_amount_from,
    count_from,
    fault,
    from_text,
    interval_from,
    is_same_value,
)
from clampstand.units import Amount

_IN_WORDS = {
    "at_most": "at most {}",
    "less_than": "less than {}",
    "at_least": "at least {}",
    "more_than": "more than {}",
    "at_most_count": "at most {}",
    "at_least_age": "at least {} years old",
    "at_most_interval": "no longer than {}",
}
"""Every way to state a limit, as a person says it."""


@dataclass(frozen=True, slots=True)
class Statement:
    """What a limit asks for: its comparator and its value."""

    comparator: str
    value: Amount | Interval | int

    def __str__(self) -> str:
        return _IN_WORDS[self.comparator].format(self.value)

    def means_as(self, other: "Statement") -> bool:
        """Whether two ask for the same: ``at most 1 h`` and ``at most 60 min`` do."""
        return self.comparator == other.comparator and is_same_value(self.value, other.value)


_READERS: dict[str, Callable[[str], Amount | Interval | int]] = {
    **dict.fromkeys(("at_most", "less_than", "at_least", "more_than"), any_amount_from),
    "at_most_count": count_from,
    "at_least_age": age_from,
    "at_most_interval": interval_from,
}
"""Comparator → how its value is read."""


def statement_from(text: str) -> Statement:
    """What a limit asks for, from the words a page says it in: ``at most 5000 ppm``.

    >>> str(statement_from("at least 16 years old"))
    'at least 16 years old'
    """
    for comparator, words in _IN_WORDS.items():
        before, after = words.split("{}")
        if text.startswith(before) and text.endswith(after):
            try:
                written = text.removeprefix(before).removesuffix(after).strip()
                return Statement(comparator, _READERS[comparator](written))
            except PydanticCustomError:
                continue
    raise fault(
        f"{text[:80] or 'nothing'} does not say what a limit asks for",
        "write it as the page of limits does, for example at most 5000 ppm",
    )


Stated = Annotated[Statement, from_text(statement_from), WithJsonSchema({"type": "string"})]


_SAID = {"age_under": "under {}", "age_from": "from {}", "made_before": "made before {}"}
"""What stands round a value that does not say by itself what it is."""


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

    @property
    def in_words(self) -> str:
        """What it holds for, in a few words, as a table names it: ``dc``, ``under 18, from 16``."""
        said = (_SAID.get(name, "{}").format(value) for name, value in self if value is not None)
        return ", ".join(said)


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
    def says(self) -> Statement:
        """What it asks for."""
        return Statement(self.comparator, self.value)

    @property
    def in_words(self) -> str:
        """The limit as a person says it: ``at least 100 mm``."""
        return str(self.says)

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
