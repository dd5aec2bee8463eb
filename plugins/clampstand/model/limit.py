"""A limit: what it holds for, its value, whose it is, where it was read and when it must be read again."""

from typing import ClassVar, Literal

from pydantic import model_validator

from clampstand.findings import Layer
from clampstand.model.base import AnyAmount, Count, Day, Definition, Entry, Id, Line, Time, Words, fault
from clampstand.units import Amount


class AppliesTo(Definition):
    """What a limit holds for; a key left out holds for everything."""

    current: Literal["dc", "ac"] | None = None
    role: Line | None = None
    nuclide: Id | None = None
    form: Line | None = None
    age_under: Count | None = None
    age_from: Count | None = None
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
    applies_to: AppliesTo = AppliesTo()
    averaged_over: Time | None = None
    combine: Literal["each", "sum of fractions"] = "each"
    citation: Id
    provision: Line | None = None
    read_on: Day
    check_again_by: Day
    verified: Literal["yes", "no"] = "yes"
    """``no`` for a value from memory or from a secondary page; every page that uses it says so."""
    waivable: Literal["yes", "no"] = "yes"
    supersedes: Id | None = None
    note: Words | None = None

    @model_validator(mode="after")
    def _one_comparator(self) -> "Limit":
        if len(self._comparators()) != 1:
            raise fault(
                "a limit needs one of at_most, less_than, at_least, more_than",
                "write exactly one of the four",
            )
        return self

    def _comparators(self) -> dict[str, Amount]:
        return {
            name: amount
            for name in ("at_most", "less_than", "at_least", "more_than")
            if (amount := getattr(self, name)) is not None
        }

    @property
    def comparator(self) -> str:
        """Which of the four comparators it uses."""
        return next(iter(self._comparators()))

    @property
    def amount(self) -> Amount:
        """The limiting value."""
        return next(iter(self._comparators().values()))

    @property
    def in_words(self) -> str:
        """The limit as a person says it: ``at least 100 mm``."""
        return f"{self.comparator.replace('_', ' ')} {self.amount}"

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
