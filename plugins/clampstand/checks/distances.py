"""Distances that people keep, declared or said in a step, for the rules that judge them."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.findings import Problem, Spot
from clampstand.limits import keeps, whose
from clampstand.model.limit import Limit
from clampstand.model.step import DistanceEnds
from clampstand.timeline import Moment, Power
from clampstand.units import Amount, NotAnAmount, UnlikeUnits, read_amount

LIMITED: dict[DistanceEnds, str] = {
    "hands": "radiation.hand-to-source",
    "watchers": "radiation.watchers-to-source",
    "people": "electrical.people-to-live",
}
"""Whose distance → the key of its limit."""


@dataclass(frozen=True, slots=True)
class Kept:
    """A distance somebody keeps: how much, where it is written, and in which step or by which name."""

    amount: Amount
    spot: Spot
    where: str


def amount_named(lesson: Lesson, text: str) -> Amount | None:
    """The amount a step means: a declared number by its name, or a quantity written out. None for neither."""
    if text in lesson.practical.numbers:
        return lesson.practical.numbers[text].value
    try:
        return read_amount(text)
    except NotAnAmount:
        return None


def a_source_is_out(moment: Moment) -> bool:
    """Whether distances to a source matter in a step."""
    return bool(moment.during.out)


def a_tool_holds_a_source(lesson: Lesson, moment: Moment) -> bool:
    """Whether distances of hands matter in a step: not to a source that a gloved hand may hold."""
    return any(needs_tool(lesson, slot) for slot in moment.during.out)


def a_supply_is_on(moment: Moment) -> bool:
    """Whether distances to live parts matter in a step."""
    return any(supplied.power is Power.ON for supplied in moment.during.supplies.values())


def declared(lesson: Lesson, ends: DistanceEnds) -> tuple[Kept, ...]:
    """The declared numbers that obey the limit of one sort of distance."""
    practical = lesson.practical
    return tuple(
        Kept(number.value, practical.at("numbers", name, "value"), name)
        for name, number in practical.numbers.items()
        if number.obeys == LIMITED[ends]
    )


def said(lesson: Lesson, ends: DistanceEnds, matters: Callable[[Moment], bool]) -> Iterator[Kept]:
    """The distances steps name that hold while they matter: until the phase ends or another is named.

    A step that names a declared number says nothing new.
    """
    of_declared = {kept.where for kept in declared(lesson, ends)}
    last: Kept | None = None
    phase = ""
    met: set[Spot] = set()
    for moment in lesson.moments:
        if moment.ref.phase != phase:
            phase, last = moment.ref.phase, None
        text = moment.step.stand.get(ends)
        if text is not None:
            amount = None if text in of_declared else amount_named(lesson, text)
            spot = lesson.spot(moment.ref, "stand", ends)
            last = None if amount is None else Kept(amount, spot, str(moment.ref))
        if last is not None and matters(moment) and last.spot not in met:
            met.add(last.spot)
            yield last


def too_close(
    lesson: Lesson, ends: DistanceEnds, matters: Callable[[Moment], bool], words: str
) -> Iterator[Problem]:
    """Every distance of one sort that does not keep to the strictest limit in force.

    Args:
        lesson: the practical.
        ends: whose distance.
        matters: in which steps it does.
        words: who is how far from what: ``hands are {} from the source``.
    """
    limit = lesson.limit(LIMITED[ends])
    if limit is None:
        return
    ours = declared(lesson, ends)
    for kept in (*ours, *said(lesson, ends, matters)):
        if not _keeps(kept.amount, limit):
            others = tuple((each.spot, f"{each.amount} is declared here") for each in ours if each != kept)
            against = "".join(f", and {other.amount} under {other.where}" for other in ours if other != kept)
            yield Problem(
                kept.spot,
                f"{kept.where}: {words.format(kept.amount)}",
                found=f"{kept.amount} in {kept.where}{against}",
                needed=limit.in_words,
                mend=f"write {limit.amount} or more",
                whose=whose(limit),
                related=others,
            )


def _keeps(amount: Amount, limit: Limit) -> bool:
    """Whether a distance keeps to its limit; what is no distance does not."""
    try:
        return keeps(amount.low, limit)
    except (UnlikeUnits, TypeError):
        return False
