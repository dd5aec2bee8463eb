"""Which verdicts flip when other packs are in force, or when a limit has another value."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from clampstand.checks.engine import Verdict, verdicts
from clampstand.findings import Severity
from clampstand.limits import the_limit
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.practical import Practical
from clampstand.reading.findings import did_you_mean

DEPARTMENT = "the whole department"
"""Where a change stands that no practical names."""


class NoSuchPack(ValueError):
    """A pack is asked for that the content does not have."""


@dataclass(frozen=True, slots=True)
class ChangedLimit:
    """The limit that holds for one key and circumstances, before and after; None where there is none."""

    key: str
    circumstances: Mapping[str, str]
    before: Limit | None
    after: Limit | None

    def __str__(self) -> str:
        so = f" ({', '.join(self.circumstances.values())})" if self.circumstances else ""
        return f"{self.key}{so}: {_in_words(self.before)} → {_in_words(self.after)}"


@dataclass(frozen=True, slots=True)
class Flips:
    """What changes for one practical, or for the rest of the department.

    Args:
        new: verdicts that come.
        gone: verdicts that go.
        limits: limits that change, among those its declared numbers obey.
    """

    new: tuple[Verdict, ...]
    gone: tuple[Verdict, ...]
    limits: tuple[ChangedLimit, ...]

    @property
    def new_stops(self) -> int:
        """How many stops come."""
        return sum(verdict.severity is Severity.STOP for verdict in self.new)


def with_packs(book: Book, names: Sequence[str]) -> Book:
    """The same content with other packs in force, in whatever case they are named. Raises NoSuchPack."""
    known = {name.casefold(): name for name in book.packs}
    chosen = tuple(name if name in book.packs else known.get(name.casefold(), name) for name in names)
    for name in chosen:
        if name not in book.packs:
            meant = did_you_mean(name, book.packs, f"there are {', '.join(book.packs)}")
            raise NoSuchPack(f"there is no pack {name}; {meant}")
    return replace(book, department=book.department.model_copy(update={"packs": chosen}))


def with_limits_of(book: Book, other: Book) -> Book:
    """The same content with the packs of another one, and their sources."""
    return replace(book, packs=other.packs, citations={**book.citations, **other.citations})


def flips(before: Book, after: Book) -> Mapping[str, Flips]:
    """What flips, by practical (``practicals/spark-counter``); the rest comes last, under one name."""
    old, new = _by_what_they_say(before), _by_what_they_say(after)
    limits = tuple(changed_limits(before, after))
    come = [verdict for said, verdict in new.items() if said not in old]
    gone = [verdict for said, verdict in old.items() if said not in new]
    found: dict[str, Flips] = {}
    for practical in after.practicals.values():
        about = _subjects_of(practical, after)
        obeyed = {number.obeys for number in practical.numbers.values()}
        found[f"practicals/{practical.id}"] = Flips(
            tuple(verdict for verdict in come if verdict.subject in about),
            tuple(verdict for verdict in gone if verdict.subject in about),
            tuple(limit for limit in limits if limit.key in obeyed),
        )
    named = {limit.key for one in found.values() for limit in one.limits}
    met = {_told(verdict) for one in found.values() for verdict in (*one.new, *one.gone)}
    found[DEPARTMENT] = Flips(
        tuple(verdict for verdict in come if _told(verdict) not in met),
        tuple(verdict for verdict in gone if _told(verdict) not in met),
        tuple(limit for limit in limits if limit.key not in named),
    )
    return {subject: one for subject, one in found.items() if one.new or one.gone or one.limits}


def _subjects_of(practical: Practical, book: Book) -> frozenset[str]:
    """What verdicts concern a practical: itself, and the sources and supplies it may use."""
    sources = (f"sources/{source}" for slot in practical.sources for source in slot.one_of)
    supplies = (f"supplies/{unit.id}" for item in practical.items for unit in book.units_of(item))
    return frozenset((f"practicals/{practical.id}", *sources, *supplies))


def _by_what_they_say(book: Book) -> Mapping[tuple[str, ...], Verdict]:
    return {_told(verdict): verdict for verdict in verdicts(book)}


def _told(verdict: Verdict) -> tuple[str, ...]:
    """What tells a verdict from others; what is needed is not of it, for that is what a limit changes."""
    return verdict.subject, verdict.rule, verdict.severity, verdict.problem.message


def changed_limits(before: Book, after: Book) -> Iterator[ChangedLimit]:
    """Every key and circumstance whose strictest limit is another one afterwards."""
    asked: dict[tuple[str, str], dict[str, str]] = {}
    for limit in (*before.limits_in_force, *after.limits_in_force):
        so = {name: str(value) for name, value in limit.applies_to.model_dump(exclude_none=True).items()}
        asked[limit.key, str(limit.applies_to)] = so
    for (key, _), so in sorted(asked.items(), key=lambda item: item[0]):
        old, new = the_limit(key, before, **so), the_limit(key, after, **so)
        if not _is_alike(old, new):
            yield ChangedLimit(key, so, old, new)


def _is_alike(old: Limit | None, new: Limit | None) -> bool:
    if old is None or new is None:
        return old is new
    return (old.layer, old.comparator, old.value) == (new.layer, new.comparator, new.value)


def _in_words(limit: Limit | None) -> str:
    return "none" if limit is None else f"{limit.in_words} ({limit.layer})"


def flips_as_text(found: Mapping[str, Flips]) -> str:
    """The flips one practical after the other, and how many there are."""
    parts = ["\n".join([subject, *(f"  {line}" for line in _lines(one))]) for subject, one in found.items()]
    stops = {_told(v) for one in found.values() for v in one.new if v.severity is Severity.STOP}
    gone = {_told(v) for one in found.values() for v in one.gone if v.severity is Severity.STOP}
    changed = {str(limit) for one in found.values() for limit in one.limits}
    limits = "1 limit" if len(changed) == 1 else f"{len(changed)} limits"
    come = "1 stop" if len(stops) == 1 else f"{len(stops)} stops"
    tally = f"{come} would come, {len(gone)} would go, {limits} would change"
    return "\n\n".join([*parts, tally])


def _lines(one: Flips) -> Iterator[str]:
    for words, some in (("new", one.new), ("gone", one.gone)):
        for verdict in some:
            needed = f" (needed: {verdict.problem.needed})" if verdict.problem.needed else ""
            told = f"{words} {verdict.severity} [{verdict.rule}] {verdict.problem.message}{needed}"
            yield told if verdict.subject.startswith("practicals/") else f"{told} – {verdict.subject}"
    for limit in one.limits:
        yield f"limit {limit}"
