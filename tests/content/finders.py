"""How a fact asked of a practical is found in its definition: one small function for each sort."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel

from clampstand.calculators.sheet import Sheet
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.limits import the_limit
from clampstand.model.book import Book
from clampstand.model.practical import PHASES, Practical
from clampstand.model.step import Step
from clampstand.rendering.prose import plain, quotes_of
from clampstand.units import Amount, NotAnAmount, q, read_amount

Fact = Mapping[str, Any]


@dataclass(frozen=True)
class Beside:
    """A practical as the handbook has it, with what was worked out for it."""

    practical: Practical
    sheet: Sheet
    book: Book

    def text(self, thing: object) -> str:
        """Every text in a part of the definition, what it quotes written out, in small letters."""
        written = " ".join(_texts(thing))
        return plain(written, quotes_of(self.practical, self.book)).replace("\u00a0", " ").casefold()

    def has_words(self, thing: object, words: str | list[str]) -> bool:
        """Whether all of the words, or all of the phrases of a list, stand somewhere in a part."""
        text = self.text(thing)
        wanted = words.split() if isinstance(words, str) else words
        return all(word.casefold() in text for word in wanted)


def _texts(thing: object) -> Iterator[str]:
    if isinstance(thing, Amount):
        yield str(thing)
    elif isinstance(thing, BaseModel):
        for value in vars(thing).values():
            yield from _texts(value)
    elif isinstance(thing, Mapping):
        for name, value in thing.items():
            yield str(name)
            yield from _texts(value)
    elif isinstance(thing, Iterable) and not isinstance(thing, str):
        for value in thing:
            yield from _texts(value)
    elif thing is not None:
        yield str(thing)


def _is(value: object, wanted: object) -> bool:
    """Whether a field says what is wanted, or holds it among others."""
    if isinstance(value, Mapping):
        return all(key in value and _is(value[key], one) for key, one in _pairs(wanted))
    if isinstance(value, tuple | list | frozenset):
        held = [str(one) for one in value]
        return all(str(one) in held for one in (wanted if isinstance(wanted, list) else [wanted]))
    if isinstance(value, Amount):
        return bool(value == read_amount(str(wanted), value.kind))
    return str(value) == str(wanted)


def _pairs(wanted: object) -> Iterable[tuple[str, object]]:
    if not isinstance(wanted, Mapping):
        raise TypeError(f"{wanted} is looked for in something that has names: write name: value")
    return wanted.items()


def _fields(thing: object, fact: Fact, *but: str) -> bool:
    """Whether every other field of a fact stands in a part as it says; ``says`` looks at its texts."""
    return all(
        _is(getattr(thing, name), wanted) for name, wanted in fact.items() if name not in (*but, "says")
    )


def _row(beside: Beside, rows: Iterable[object], fact: Fact, *but: str) -> bool:
    return any(_fields(row, fact, *but) and beside.has_words(row, fact.get("says", "")) for row in rows)


def _field(beside: Beside, fact: Fact) -> bool:
    value: object = beside.practical
    for part in fact["field"].split("."):
        value = getattr(value, part)
    return _is(value, fact["value"])


def _says(beside: Beside, fact: Fact) -> bool:
    part = getattr(beside.practical, fact["in"]) if "in" in fact else beside.practical
    return beside.has_words(part, fact["says"])


def _kit(beside: Beside, fact: Fact) -> bool:
    totals = [total for total in beside.sheet.totals if total.line.item == fact["kit"]]
    lines = [total.line for total in totals if "in_all" not in fact or total.in_all == q(fact["in_all"])]
    return _row(beside, lines, fact, "kit", "in_all")


def _number(beside: Beside, fact: Fact) -> bool:
    number = beside.practical.numbers.get(fact["number"])
    if number is None or not _fields(number, fact, "number", "layer"):
        return False
    limit = the_limit(number.obeys, beside.book) if number.obeys else None
    return "layer" not in fact or (limit is not None and limit.layer == fact["layer"])


def _worked(beside: Beside, fact: Fact) -> bool:
    """A worked number; ``gives`` is what it comes to elsewhere, ``within`` how near that must be."""
    outcomes = [numbers for entry, numbers in beside.sheet.numbers if entry.compute == fact["worked"]]
    found = [number for numbers in outcomes if not isinstance(numbers, CannotWork) for number in numbers]
    return any(_comes_to(number, fact) for number in found)


def _comes_to(number: Worked, fact: Fact) -> bool:
    if "gives" not in fact:
        return True
    try:
        wanted = read_amount(fact["gives"], number.kind)
    except NotAnAmount:
        return False
    slack = float(q(fact.get("within", "2 %")).m_as("dimensionless"))
    return bool(abs(number.value - wanted.value) <= abs(wanted.value) * slack)


def _hazard(beside: Beside, fact: Fact) -> bool:
    return _row(beside, beside.practical.hazards, fact)


def _waste(beside: Beside, fact: Fact) -> bool:
    return _row(beside, beside.practical.waste, fact | {"what": fact["waste"]}, "waste")


def _emergency(beside: Beside, fact: Fact) -> bool:
    name = fact["emergency"]
    told = beside.book.emergencies.get(name)
    return (
        name in beside.practical.emergency
        and told is not None
        and beside.has_words(told, fact.get("says", ""))
    )


def _worn(beside: Beside, fact: Fact) -> bool:
    item, who = fact["worn"], fact.get("by")
    return any(
        item in items and (who is None or who in (wearer, "anybody"))
        for phase in PHASES
        for step in beside.practical.steps(phase)
        for wearer, items in step.puts_on.items()
    )


def _nobody_wears(beside: Beside, fact: Fact) -> bool:
    """That nothing need be worn by the class: no step of the lesson puts anything on, and a note says why."""
    lesson = (step for phase in ("set_up", "run") for step in beside.practical.steps(phase))
    return not any(step.puts_on for step in lesson) and beside.has_words(
        beside.practical.wear_note, fact["nobody_wears"]
    )


def _attended(beside: Beside, fact: Fact) -> bool:
    """That somebody's part of a phase takes no more than so long, waiting left out; or no less."""
    steps = [s for s in beside.practical.steps(fact["attended"]) if not s.unattended]
    took = sum(float(s.takes.value.m_as("min")) for s in steps if fact["by"] in s.doers)
    asked = float(q(fact["about"]).m_as("min"))
    return asked / 2 <= took <= asked * 2


def _cites(beside: Beside, fact: Fact) -> bool:
    wanted = fact["cites"]
    practical = beside.practical
    limits = (the_limit(n.obeys, beside.book) for n in practical.numbers.values() if n.obeys)
    worked = (n for _, found in beside.sheet.numbers if not isinstance(found, CannotWork) for n in found)
    named = {
        *practical.sources_read,
        *(number.source for number in practical.numbers.values()),
        *(entry.source for entry in practical.expect),
        *(limit.citation for limit in limits if limit is not None),
        *(citation for number in worked for citation in number.citations),
    }
    return wanted in named and wanted in beside.book.citations


def _source(beside: Beside, fact: Fact) -> bool:
    return any(fact["source"] in slot.one_of for slot in beside.practical.sources)


def _no_source(beside: Beside, fact: Fact) -> bool:
    return fact["no_source"] is True and not beside.practical.sources


def _exception(beside: Beside, fact: Fact) -> bool:
    return _row(beside, beside.practical.exceptions, fact | {"rule": fact["exception"]}, "exception")


def _not_before(beside: Beside, fact: Fact) -> bool:
    """A time to order or to grow: the lead of a kit item."""
    item = beside.book.kit.get(fact["ordered"])
    return item is not None and item.id in beside.practical.items and str(item.lead) == fact["before"]


def _circuit(beside: Beside, fact: Fact) -> bool:
    return _row(beside, beside.practical.circuits, fact | {"supply": fact["circuit"]}, "circuit")


def step_from(beside: Beside, fact: Fact, start: int = 0) -> int | None:
    """The place of the first step of a phase, from a place on, that does what the fact says."""
    steps = beside.practical.steps(fact["step"])
    return next((n for n in range(start, len(steps)) if _does(beside, steps[n], fact)), None)


def _does(beside: Beside, step: Step, fact: Fact) -> bool:
    return _fields(step, fact, "step") and beside.has_words(step, fact.get("says", ""))


def _rows_of(part: str, word: str) -> Callable[[Beside, Fact], bool]:
    """A fact whose words must all stand in one row of a part: one fault, one question."""
    return lambda beside, fact: any(
        beside.has_words([row, _at(beside, row)], fact[word]) for row in getattr(beside.practical, part)
    )


def _at(beside: Beside, row: object) -> object:
    number = beside.practical.numbers.get(getattr(row, "at", None) or "")
    return None if number is None else number.value


FINDERS: Mapping[str, Callable[[Beside, Fact], bool]] = {
    "attended": _attended,
    "circuit": _circuit,
    "cites": _cites,
    "emergency": _emergency,
    "exception": _exception,
    "expects": _rows_of("expect", "expects"),
    "fault": _rows_of("when_it_fails", "fault"),
    "field": _field,
    "hazard": _hazard,
    "kit": _kit,
    "misconception": _rows_of("misconceptions", "misconception"),
    "no_source": _no_source,
    "nobody_wears": _nobody_wears,
    "number": _number,
    "ordered": _not_before,
    "question": _rows_of("ask", "question"),
    "says": _says,
    "source": _source,
    "step": lambda beside, fact: step_from(beside, fact) is not None,
    "waste": _waste,
    "worked": _worked,
    "worn": _worn,
}
"""How each sort of fact is found, by the word that a fact begins with."""
