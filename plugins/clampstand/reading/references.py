"""Everything that is named is somewhere: items, rooms, sources, numbers, steps, and quotes in sentences."""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import islice
from typing import TypeAlias

from clampstand.findings import Finding, Route, Spot
from clampstand.model.base import IN_BRACES, Entry
from clampstand.model.book import Book
from clampstand.model.emergency import Emergency
from clampstand.model.practical import PHASES, STOP_WORD, Practical
from clampstand.model.skill import Skill
from clampstand.model.step import Step
from clampstand.reading.findings import MOST_FINDINGS, SCHEMA, UNKNOWN_ID, listed, near, shown, stop
from clampstand.reading.names import (
    DISTANCE,
    GIVEN,
    LIMIT,
    NUMBER,
    OWN_KIT,
    QUOTE,
    RESULT,
    SHELVES,
    SLOT,
    STEP,
    THING,
    WORD,
    Named,
    names_in,
)
from clampstand.reading.places import Places
from clampstand.units import NotAnAmount, read_amount

Broken: TypeAlias = frozenset[tuple[str, str]]

_FREE = "free:"
_QUOTABLE = ("rooms", "contacts", "hazards", "practicals", "skills", "emergencies", "sources", "supplies")
"""Shelves a sentence may quote from besides what is the practical's own."""

_OF_STEPS = (RESULT, STEP)
"""What steps give each other: lost with one word, it is missing wherever it is named."""
_THINGS = ("sources", "supplies", "kit")
"""Shelves of what can be faulty."""

_MISSING_HERE = {
    NUMBER: "is not one of the numbers declared here",
    DISTANCE: "is neither a number declared here nor a quantity",
    SLOT: "is not the name of a source here",
    STEP: "is not the name of a step here",
    RESULT: "is measured in no step here",
    LIMIT: "is the key of no limit in any pack",
    THING: "is no source, no supply and no item of the kit",
    GIVEN: "is no number, source, item, room or substance, and no quantity",
}


def unknown_ids(book: Book, broken: Broken, places: Places) -> list[Finding]:
    """A stop for every name that is nowhere, at the name.

    Args:
        book: the whole definitions.
        broken: shelf and id of what is written but not whole, which is no unknown name.
        places: for the places.
    """
    look_up = _LookUp(book, broken)
    found: list[Finding] = []
    left: dict[str, int] = {}
    """Findings that may still be told of each file."""
    for subject, entry in _entries(book):
        file = entry.spot.file
        told = list(islice(look_up.in_entry(entry), left.get(file, MOST_FINDINGS)))
        left[file] = left.get(file, MOST_FINDINGS) - len(told)
        for rule, spot, message, mend, text in told:
            finding = stop(rule, places.of(spot), message, mend, text)
            found.append(replace(finding, subject=subject))
    return found


def wrong_names(entry: Entry, book: Book) -> list[str]:
    """What one entry names that is nowhere in a book, as messages."""
    return [message for _, _, message, _, _ in _LookUp(book, frozenset()).in_entry(entry)]


def _entries(book: Book) -> Iterator[tuple[str, Entry]]:
    yield "department", book.department
    for shelf in SHELVES:
        for its_id, entry in book.shelf(shelf).items():
            yield f"{shelf}/{its_id}", entry


_Wrong: TypeAlias = tuple[str, Spot, str, str, str]
"""Rule, spot, message, mend, and the text that is written."""


@dataclass(frozen=True)
class _Here:
    """What has a name inside one definition."""

    named: Mapping[str, Collection[str]] = field(default_factory=dict)
    what: str = "definition"

    def of(self, kind: str) -> Collection[str]:
        return self.named.get(kind, ())


@dataclass(frozen=True)
class _LookUp:
    """The shelves of a book, and what is broken."""

    book: Book
    broken: Broken

    @cached_property
    def _limit_keys(self) -> frozenset[str]:
        return frozenset(limit.key for pack in self.book.packs.values() for limit in pack.limits)

    def in_entry(self, entry: Entry) -> Iterator[_Wrong]:
        """What one entry names that is nowhere."""
        here = self._here(entry)
        quotes = isinstance(entry, Practical | Skill | Emergency)
        missing = Counter[tuple[str, str]]()
        """What no step of its own gives → how many steps name it: told once, at the first."""
        wrong: list[tuple[Named, str, str]] = []
        for named in names_in(entry):
            if named.shelf != QUOTE:
                if not self._is_known(named.text, named.shelf, here):
                    missing[named.shelf, named.text] += 1
                    if named.shelf not in _OF_STEPS or missing[named.shelf, named.text] == 1:
                        wrong.append((named, *self._advice(named.text, named.shelf, here)))
            elif quotes:
                for message, mend, text in self._quotes(named.text, here):
                    yield UNKNOWN_ID, _spot(entry, named), message, mend, text
        for named, message, mend in wrong:
            times = missing[named.shelf, named.text] if named.shelf in _OF_STEPS else 1
            also = f"; {times} steps name it" if times > 1 else ""
            yield UNKNOWN_ID, _spot(entry, named), message + also, mend, named.text
        yield from _same_names(entry)

    def _here(self, entry: Entry) -> _Here:
        if isinstance(entry, Practical):
            steps = [step for phase in PHASES for step in entry.steps(phase)]
            rooms = [self.book.rooms[r] for ids in entry.where.values() for r in ids if r in self.book.rooms]
            equipment = {item for room in rooms for item in room.equipment}
            slots = [slot.name for slot in entry.sources]
            here = _here("practical", steps, self._meant(entry.items) | equipment, slots, entry.numbers)
            return replace(here, named={**here.named, WORD: [STOP_WORD] if entry.stop_word else []})
        if isinstance(entry, Skill):  # rehearsed with any source or a certain one, without declared numbers
            slots_too = {"source", *self.book.sources}
            return _here("skill", list(entry.steps), self._meant(entry.kit), slots_too, {})
        if isinstance(entry, Emergency):
            return _Here({OWN_KIT: self.book.kit}, "emergency")
        return _Here()

    def _meant(self, items: Collection[str]) -> frozenset[str]:
        """A kit list with what its misspelt lines probably mean, so that one slip is told once."""
        kit = self.book.kit
        return frozenset(items) | {near(item, kit) for item in items if item not in kit}

    def _shelf(self, kind: str) -> Collection[str]:
        if kind == LIMIT:
            return self._limit_keys
        if kind == THING:
            return {name for shelf in _THINGS for name in self.book.shelf(shelf)}
        return self.book.shelf(kind) if kind in SHELVES else ()

    def _is_known(self, text: str, kind: str, here: _Here) -> bool:
        if kind in SHELVES or kind == LIMIT:
            return text in self._shelf(kind) or (kind, text) in self.broken
        if kind == THING:
            return any(self._is_known(text, shelf, here) for shelf in _THINGS)
        if text in here.of(kind):
            return True
        if kind == DISTANCE or (kind == NUMBER and here.what == "skill"):
            return text in here.of(NUMBER) or _is_amount(text)
        if kind == GIVEN:  # several may be named, with commas between
            return all(self._is_given(one.strip(), here) for one in text.split(","))
        return False

    def _is_given(self, text: str, here: _Here) -> bool:
        shelves = ("rooms", "substances", "materials", "nuclides", "sources", "supplies")
        known = any(self._is_known(text, shelf, here) for shelf in (NUMBER, SLOT, OWN_KIT, *shelves))
        return known or _is_amount(text)

    def _advice(self, text: str, kind: str, here: _Here) -> tuple[str, str]:
        """Message and mend for a name that is not where it must be."""
        name = shown(text)
        if kind == OWN_KIT:
            return self._kit_advice(text, here)
        known = self._shelf(kind) or here.of(NUMBER if kind == DISTANCE else kind)
        elsewhere = self._elsewhere(text, kind)
        if kind in SHELVES and elsewhere:
            message = f"{name} is one of the {SHELVES[elsewhere]}, not of the {SHELVES[kind]}"
        elif kind in SHELVES:
            message = f"{name} is not one of the {SHELVES[kind]}"
        else:
            message = f"{name} {_MISSING_HERE[kind]}"
        return message, _mend(text, known)

    def _kit_advice(self, text: str, here: _Here) -> tuple[str, str]:
        own = here.of(OWN_KIT)
        if self._is_known(text, "kit", here):
            message = f"{shown(text)} is in the department's kit but not in this {here.what}'s kit list"
            meant = near(text, own)
            return message, f"add it to the kit list{f', or did you mean {meant}?' if meant else ''}"
        message = f"{shown(text)} is not in this {here.what}'s kit list"
        if elsewhere := self._elsewhere(text, "kit"):
            message = f"{shown(text)} is one of the {SHELVES[elsewhere]}, not of the items of the kit"
        return message, _mend(text, own if near(text, own) else {*own, *self.book.kit})

    def _elsewhere(self, text: str, kind: str) -> str:
        """Another shelf that has the name, or nothing."""
        return next((shelf for shelf in SHELVES if shelf != kind and text in self.book.shelf(shelf)), "")

    def _quotes(self, text: str, here: _Here) -> Iterator[tuple[str, str, str]]:
        """The quotes of a sentence that quote nothing: message, mend, and what is written."""
        if "{" in (rest := IN_BRACES.sub("", text)) or "}" in rest:
            yield "a curly bracket has no partner, or nothing in it", "write {name} on one line", text
        for quote in dict.fromkeys(IN_BRACES.findall(text)):
            if quote.startswith(_FREE):
                if not _is_amount(quote.removeprefix(_FREE).strip()):
                    yield f"{shown(quote)} marks no quantity", "write it like {free: 50 mm}", quote
            elif not self._is_quotable(quote, here):
                yield *self._quote_advice(quote, here), quote

    def _is_quotable(self, quote: str, here: _Here) -> bool:
        return any(
            self._is_known(quote, kind, here) for kind in (NUMBER, SLOT, OWN_KIT, WORD, *_QUOTABLE)
        ) and (quote in here.of(NUMBER) or not _is_amount(quote))

    def _quote_advice(self, quote: str, here: _Here) -> tuple[str, str]:
        if self._is_known(quote, "kit", here):
            return self._kit_advice(quote, here)
        if _is_amount(quote):
            mend = f"declare it under numbers and quote its name, or write {{free: {shown(quote)}}}"
            return f"{shown(quote)} is a quantity, not the name of one", mend
        known = {*here.of(NUMBER), *here.of(SLOT), *here.of(OWN_KIT), *here.of(WORD)}
        return f"{{{shown(quote)}}} quotes nothing that is known here", _mend(quote, known)


def _here(
    what: str, steps: list[Step], items: Collection[str], slots: Collection[str], numbers: Collection[str]
) -> _Here:
    named: dict[str, Collection[str]] = {
        OWN_KIT: items,
        SLOT: slots,
        NUMBER: numbers,
        STEP: [step.name for step in steps if step.name],
        RESULT: [result for step in steps for result in step.measures],
    }
    return _Here(named, what)


def _mend(text: str, known: Collection[str]) -> str:
    if meant := near(text, known):
        return f"did you mean {meant}?"
    if not known:
        return "there is none yet; write it first"
    return f"there {'is' if len(known) == 1 else 'are'} {listed(sorted(known), 'and')}"


def _spot(entry: Entry, named: Named) -> Spot:
    spot = entry.at(*named.route)
    return spot.key() if named.at_key else spot


def _is_amount(text: str) -> bool:
    try:
        read_amount(text)
    except NotAnAmount:
        return False
    return True


def _same_names(entry: Entry) -> Iterator[_Wrong]:
    """Slots and steps that have the name of an earlier one: what names them would not know which."""
    if not isinstance(entry, Practical):
        return
    named: list[tuple[str | None, Route, str]] = [
        (slot.name, ("sources", number, "name"), "source") for number, slot in enumerate(entry.sources)
    ]
    for phase in PHASES:
        steps = entry.steps(phase)
        named += [(step.name, (phase, number, "name"), "step") for number, step in enumerate(steps)]
    met: set[tuple[str, str]] = set()
    for name, route, what in named:
        if name and (what, name) in met:
            message = f"{shown(name)} is the name of an earlier {what} already"
            yield SCHEMA, entry.at(*route), message, "give this one another name", name
        met.add((what, name or ""))
