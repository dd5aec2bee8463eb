"""Distances that steps and declared numbers keep, for the rules that judge them."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Spot
from clampstand.limits import keeps, whose
from clampstand.model.step import DistanceEnds
from clampstand.units import Amount, NotAnAmount, UnlikeUnits, read_amount


@dataclass(frozen=True, slots=True)
class Kept:
    """A distance somebody keeps: how much, where it is written, and in which step if in one."""

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


def kept_distances(lesson: Lesson, ends: DistanceEnds, key: str) -> Iterator[Kept]:
    """Every distance of one sort: declared numbers that obey the key, then what steps write out."""
    practical = lesson.practical
    for name, number in practical.numbers.items():
        if number.obeys == key:
            yield Kept(number.value, practical.at("numbers", name, "value"), name)
    for moment in lesson.moments:
        text = moment.step.stand.get(ends)
        amount = amount_named(lesson, text) if text else None
        if amount is None or (text in practical.numbers and practical.numbers[text].obeys == key):
            continue
        yield Kept(amount, lesson.spot(moment.ref, "stand", ends), str(moment.ref))


def too_close(lesson: Lesson, kept: Kept, key: str, who: str, what: str) -> Iterator[Problem]:
    """The problem of one distance that does not keep to its limit, if it doesn't."""
    limit = lesson.limit(key)
    if limit is None:
        return
    try:
        if keeps(kept.amount.low, limit):
            return
    except (UnlikeUnits, TypeError):
        yield Problem(
            kept.spot, f"{kept.where} is {kept.amount}, which is no distance", needed=limit.in_words
        )
        return
    yield Problem(
        kept.spot,
        f"{kept.where}: {who} are {kept.amount} from {what}",
        found=str(kept.amount),
        needed=limit.in_words,
        mend=f"write {limit.amount} or more",
        whose=whose(limit),
    )
