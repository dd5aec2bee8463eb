"""Which declared numbers something besides themselves holds to their size."""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sentences import quoted_in
from clampstand.checks.times import times_named
from clampstand.model.base import is_same_value
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.model.practical import Practical
from clampstand.model.step import Step
from clampstand.units import Amount

_QUOTED = ("statute", "standard")
"""The kinds of source whose figures are limits; others hold many figures that limit nothing."""


def worked_out(practical: Practical) -> frozenset[str]:
    """The names of numbers that a calculator works out, and the handbook compares with what is written."""
    return frozenset(entry.at for entry in practical.expect if entry.compute and entry.at)


def held_elsewhere(lesson: Lesson) -> frozenset[str]:
    """The names of numbers that a calculator, an expectation, a circuit, a release or a step holds."""
    practical = lesson.practical
    return frozenset(
        (
            *_expected(practical),
            *(
                name
                for each in practical.circuits
                for name in (each.voltage, each.through, each.stores)
                if name
            ),
            *(release.vented for release in practical.releases if release.vented),
            *(number.fades_with for number in practical.numbers.values() if number.fades_with),
            *(name for moment in lesson.moments for name in _in_step(moment.step)),
            *(name for moment in lesson.moments for name in _as_long_as(moment.step, practical)),
        )
    )


def _expected(practical: Practical) -> Iterator[str]:
    """What is expected, and what it is worked from."""
    for entry in practical.expect:
        if entry.at:
            yield entry.at
        yield from entry.names_given


def _in_step(step: Step) -> Iterator[str]:
    """What a step switches on, keeps as a distance, or takes as its time."""
    yield from step.switches_on.values()
    yield from step.stand.values()
    yield from times_named(step)
    if step.fades_with:
        yield step.fades_with


def _as_long_as(step: Step, practical: Practical) -> Iterator[str]:
    """The times that a step's sentence names in whatever words, and that its minutes say too."""
    minutes = [time for time in (step.takes, step.waits) if time]
    for name in quoted_in(step.do):
        number = practical.numbers.get(name)
        if number and any(is_same_value(number.value, time) for time in minutes):
            yield name


def limits_read_in(source: str, kind: str, book: Book) -> tuple[tuple[Limit, Amount], ...]:
    """The limits of one kind that any pack, chosen or not, read in a law or a standard, with their values."""
    citation = book.citations.get(source)
    if citation is None or citation.kind not in _QUOTED:
        return ()
    return tuple(
        (limit, limit.amount)
        for pack in book.packs.values()
        for limit in pack.limits
        if limit.citation == source and limit.amount is not None and limit.amount.kind == kind
    )
