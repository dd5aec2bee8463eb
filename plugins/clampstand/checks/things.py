"""What each thing a sentence names is to the rules, by its properties and by what is done with it."""

from functools import cached_property

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import fed_by, named_supplies
from clampstand.model.kit import Item
from clampstand.timeline import Moment

NOT_MET = frozenset({"electricity"})
"""Families of hazards that nobody meets by handling: what they ask for is judged by its own words."""


class Things:
    """The things of one practical."""

    def __init__(self, lesson: Lesson) -> None:
        self._lesson = lesson

    @cached_property
    def _always(self) -> dict[str, frozenset[str]]:
        """Name → what it is in every step, as far as it has been asked for."""
        return {slot.name: frozenset({"source"}) for slot in self._lesson.practical.sources}

    @cached_property
    def _supplies(self) -> frozenset[str]:
        return frozenset(named_supplies(self._lesson))

    @cached_property
    def _fed(self) -> frozenset[str]:
        return frozenset(name for supply in self._supplies for name in fed_by(self._lesson, supply))

    @cached_property
    def _lit(self) -> frozenset[str]:
        return frozenset(name for moment in self._lesson.moments for name in moment.step.lights)

    @cached_property
    def _holding(self) -> frozenset[str]:
        return frozenset(moment.step.puts_in for moment in self._lesson.moments if moment.step.puts_in)

    def kinds_of(self, name: str, moment: Moment) -> frozenset[str]:
        """The kinds of thing that a name in braces is, as far as that matters in a step."""
        always = self._always.get(name)
        if always is None:
            item = self._lesson.book.kit.get(name)
            always = frozenset(self._kinds(item)) if item is not None else frozenset()
            self._always[name] = always
        return always | {"burning"} if name in moment.during.lit else always

    def matters(self, name: str, moment: Moment) -> bool:
        """Whether it makes a difference to the rules who has a thing in hand."""
        return bool(self.kinds_of(name, moment) & {"source", "material", "burning", "in the air"})

    def _kinds(self, item: Item) -> set[str]:
        name = item.id
        kinds = {
            "supply": name in self._supplies,
            "fed": name in self._fed - self._supplies,
            "shorting": item.discharges and bool(self._supplies),
            "worn": item.worn is not None,
            "flame": item.ignites is not None or name in self._lit,
            "in the air": item.turns_to_gas or item.flammable_vapour,
            "holding": name in self._holding,
            "material": self._is_met(item) and name not in self._supplies,
        }
        return {kind for kind, so in kinds.items() if so}

    def _is_met(self, item: Item) -> bool:
        """Whether whoever handles it meets a hazard, or something that rubs off."""
        known = self._lesson.book.hazards
        met = (name in known and known[name].family not in NOT_MET for name in item.hazards)
        return bool(item.needs_washing) or any(met)
