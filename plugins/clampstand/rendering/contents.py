"""Everything the pages are made from, and the few look-ups that several pages share."""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, TypeAlias

from clampstand.calculators.sheet import Sheet
from clampstand.checks.rule import Rule
from clampstand.findings import Finding
from clampstand.limits import the_limit
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.practical import Phase, Practical
from clampstand.model.step import Number
from clampstand.rendering.prose import Quotes
from clampstand.rendering.terms import Words

Shared = tuple[Practical, ...]
Paper: TypeAlias = Literal["a4", "letter"]
PAPERS: Mapping[Paper, str] = {"a4": "A4", "letter": "US Letter"}


@dataclass(frozen=True)
class Contents:
    """What was read, found and worked out. Pages show it and add nothing.

    Args:
        book: the department's content.
        sheets: the worked numbers of every practical, by its id.
        findings: everything found, in order.
        rules: the rules it was judged by.
        paper: the paper of the PDF cards beside the pages; None where there are none.
    """

    book: Book
    sheets: Mapping[str, Sheet]
    findings: tuple[Finding, ...] = ()
    rules: Sequence[Rule] = ()
    paper: Paper | None = None

    @property
    def day(self) -> dt.date:
        """The day every number holds for."""
        return self.book.department.computed_for

    @property
    def paper_name(self) -> str:
        """The paper of the PDF cards as people call it; nothing where there are none."""
        return PAPERS[self.paper] if self.paper else ""

    @cached_property
    def quotes(self) -> Quotes:
        """What a text outside any practical may quote."""
        return Quotes(self.book)

    @cached_property
    def words(self) -> Words | None:
        """The words of the glossary, ready to be looked for; None where there is none."""
        return Words(tuple(self.book.glossary.values())) if self.book.glossary else None

    @cached_property
    def _by_subject(self) -> Mapping[str, tuple[Finding, ...]]:
        found: dict[str, list[Finding]] = {}
        for finding in self.findings:
            found.setdefault(finding.subject, []).append(finding)
        return {subject: tuple(of_it) for subject, of_it in found.items()}

    def about(self, subject: str) -> tuple[Finding, ...]:
        """The findings about one definition, as ``practicals/spark-counter``."""
        return self._by_subject.get(subject, ())

    def rooms_of(self, practical: Practical, phase: Phase) -> list[str]:
        """The names of the rooms a phase may be done in."""
        rooms = self.book.rooms
        return [rooms[room].name if room in rooms else room for room in practical.where.get(phase, ())]

    @cached_property
    def using_item(self) -> Mapping[str, Shared]:
        """The practicals whose kit lists name an item."""
        return self._shared({p.id: sorted(p.items) for p in self.book.practicals.values()})

    @cached_property
    def using_source(self) -> Mapping[str, Shared]:
        """The practicals a source may serve in."""
        practicals = self.book.practicals.values()
        return self._shared(
            {p.id: [source for slot in p.sources for source in slot.one_of] for p in practicals}
        )

    @cached_property
    def resting_on(self) -> Mapping[str, Shared]:
        """The practicals that declare a number which obeys a limit's key."""
        practicals = self.book.practicals.values()
        return self._shared({p.id: [n.obeys for n in p.numbers.values() if n.obeys] for p in practicals})

    @cached_property
    def meeting(self) -> Mapping[str, Shared]:
        """The practicals that name an emergency."""
        return self._shared({p.id: p.emergency for p in self.book.practicals.values()})

    @cached_property
    def needing_skill(self) -> Mapping[str, Shared]:
        """The practicals that ask for a skill."""
        return self._shared({p.id: p.needs.skills for p in self.book.practicals.values()})

    def _shared(self, named: Mapping[str, Sequence[str]]) -> Mapping[str, Shared]:
        """Turn what each practical names round: for each name, the practicals, by title."""
        turned: dict[str, list[Practical]] = {}
        for practical_id in sorted(named, key=lambda one: self.book.practicals[one].title):
            for name in dict.fromkeys(named[practical_id]):
                turned.setdefault(name, []).append(self.book.practicals[practical_id])
        return {name: tuple(practicals) for name, practicals in turned.items()}

    def limit_of(self, number: Number) -> Limit | None:
        """The strictest limit in force that a declared number obeys."""
        return the_limit(number.obeys, self.book) if number.obeys else None
