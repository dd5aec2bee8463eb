"""What a rule is: a module with an id, a severity, one function and a docstring that is its page."""

import inspect
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from types import ModuleType

from clampstand.calculators import CALCULATORS
from clampstand.calculators.exposures import moments_of
from clampstand.calculators.sheet import Sheet, work_out
from clampstand.checks.sentences import Sentence, sentences_of
from clampstand.findings import Problem, Severity, Spot
from clampstand.limits import the_limit
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.limit import Limit
from clampstand.model.practical import Practical
from clampstand.timeline import Moment, StepRef


@dataclass(frozen=True)
class Lesson:
    """A practical as rules see it: with the department's book and the replay of its steps."""

    practical: Practical
    book: Book

    @cached_property
    def moments(self) -> tuple[Moment, ...]:
        """Its steps, replayed."""
        return moments_of(self.practical, self.book)

    @cached_property
    def sentences(self) -> tuple[Sentence, ...]:
        """Every text a person reads."""
        return tuple(sentences_of(self.practical))

    @cached_property
    def sheet(self) -> Sheet:
        """Its worked numbers."""
        return work_out(self.practical, self.book, CALCULATORS)

    @cached_property
    def is_whole(self) -> bool:
        """Whether all kit and sources it names are described; what is not has a stop of its own."""
        kit, sources, nuclides = self.book.kit, self.book.sources, self.book.nuclides
        named = {source for slot in self.practical.sources for source in slot.one_of}
        return (
            self.practical.items <= kit.keys()
            and named <= sources.keys()
            and {sources[name].nuclide for name in named} <= nuclides.keys()
        )

    @property
    def knows_its_limits(self) -> bool:
        """Whether every pack in force could be read. What one that could not would hold, nobody knows."""
        return set(self.book.department.packs) <= self.book.packs.keys()

    def limit(self, key: str, **circumstances: str) -> Limit | None:
        """The strictest limit in force of a key."""
        return the_limit(key, self.book, **circumstances)

    def spot(self, ref: StepRef, *route: str | int) -> Spot:
        """Where a step, or one of its values, was written."""
        return self.practical.at(*ref.route, *route)

    def candidates(self, slot_name: str) -> tuple[Source, ...]:
        """The sources of the register that may fill a slot, the first choice first."""
        slot = self.practical.slot(slot_name)
        named = slot.one_of if slot else ()
        return tuple(self.book.sources[source] for source in named if source in self.book.sources)


@dataclass(frozen=True, slots=True)
class RulePage:
    """The page of a rule, taken from its module's docstring.

    Args:
        title: what must be so, in one sentence.
        why: what happens otherwise.
        wrong: an example that is found, as YAML.
        right: its nearest legal neighbour, as YAML.
        whose: whose rule it is, in words.
    """

    title: str
    why: str
    wrong: str
    right: str
    whose: str


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of the catalogue."""

    id: str
    severity: Severity
    check: Callable[[Lesson], Iterator[Problem]] | None
    check_book: Callable[[Book], Iterator[Problem]] | None
    page: RulePage
    family: str
    excusable: bool = True
    """Whether an exception may excuse what it finds: an order of steps only where the rule says so."""


_SECTIONS = re.compile(r"^(Why|Wrong|Right|Whose):[ \t]*", re.MULTILINE)


def sections_of(docstring: str) -> Mapping[str, str]:
    """The sections of a rule's docstring by name, with its first line as ``Title``."""
    title, _, rest = docstring.partition("\n")
    pieces = _SECTIONS.split(inspect.cleandoc(rest))
    return {"Title": title.strip(), **dict(zip(pieces[1::2], pieces[2::2], strict=True))}


def rule_of(module: ModuleType) -> Rule:
    """The rule a module holds.

    Raises:
        KeyError: a section is missing from its docstring.
        AttributeError: it has no ID or SEVERITY.
    """
    sections = sections_of(module.__doc__ or "")
    page = RulePage(
        title=sections["Title"],
        why=" ".join(sections["Why"].split()),
        wrong=inspect.cleandoc("\n" + sections["Wrong"]).strip("\n"),
        right=inspect.cleandoc("\n" + sections["Right"]).strip("\n"),
        whose=" ".join(sections["Whose"].split()),
    )
    family = module.__name__.split(".")[-2]
    return Rule(
        id=module.ID,
        severity=module.SEVERITY,
        check=getattr(module, "check", None),
        check_book=getattr(module, "check_book", None),
        page=page,
        family=family,
        excusable=getattr(module, "EXCUSABLE", family != "sequence"),
    )
