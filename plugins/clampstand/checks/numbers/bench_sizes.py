"""Amounts and numbers are of a size that a teaching bench holds.

Why: a slip of a prefix makes a thousand times as much. Nobody carries a tonne to a bench, but somebody orders
it, or makes up what the page says.

Wrong:
    limits: {amount.most.volume: {at_most: 10 L}}
    cold bench:
      kit:
        2: {amount: 11 L}

Right:
    limits: {amount.most.volume: {at_most: 10 L}}
    cold bench:
      kit:
        2: {amount: 9 L}

Whose: the department's own bounds, from common practice.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.limits import keeps, whose
from clampstand.model.limit import Limit
from clampstand.units import Amount, NotAnAmount, read_amount

ID = "bench-sizes"
SEVERITY = Severity.WARNING
POSITIVE = Whose(Layer.PHYSICS, "less than nothing of this is not to be had")
EITHER_SIGN = frozenset(
    {"temperature difference", "voltage", "current", "charge", "angle", "magnetic flux density"}
    | {"fraction", "speed", "force", "field strength"}
)
"""Kinds of quantity that may lie below nought."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every amount, number, rate, ventilation and tolerance against the bounds of its kind."""
    practical = lesson.practical
    for number, line in enumerate(practical.kit):
        for word in ("amount", "allowance"):
            amount: Amount | None = getattr(line, word)
            if amount is not None:
                spot = practical.at("kit", number, word)
                yield from _out_of_bounds(lesson, f"{word} of {line.item}", amount, spot, "amount")
    changes = practical.needs.room.air_changes
    if changes is not None:
        spot = practical.at("needs", "room", "air_changes")
        yield from _out_of_bounds(lesson, "what the room must have", changes, spot, "bench")
    for number, release in enumerate(practical.releases):
        if release.rate is not None:
            spot = practical.at("releases", number, "rate")
            yield from _out_of_bounds(lesson, f"the release of {release.item}", release.rate, spot, "bench")
    for name, declared in practical.numbers.items():
        yield from _out_of_bounds(
            lesson, name, declared.value, practical.at("numbers", name, "value"), "bench"
        )
    for index, entry in enumerate(practical.expect):
        within = _per_cent(entry.within or "")
        if within is not None:
            spot = practical.at("expect", index, "within")
            yield from _out_of_bounds(lesson, "the tolerance", within, spot, "tolerance")


def _per_cent(text: str) -> Amount | None:
    """A tolerance written in per cent."""
    try:
        return read_amount(text, "fraction")
    except NotAnAmount:
        return None


def _out_of_bounds(lesson: Lesson, name: str, amount: Amount, spot: Spot, of: str) -> Iterator[Problem]:
    if amount.kind == "temperature":
        return  # degrees count from somewhere else than nought
    if amount.kind not in EITHER_SIGN and amount.low.magnitude < 0:
        yield Problem(
            spot,
            f"{name} is {amount}, less than nothing",
            found=str(amount),
            needed="nought or more",
            mend="look at the sign",
            whose=POSITIVE,
            severity=Severity.STOP,
        )
        return
    kind = amount.kind.replace(" ", "-")
    size = amount.high if amount.high.magnitude >= 0 else -amount.high
    for which in ("least", "most"):
        limit = lesson.limit(f"{of}.{which}.{kind}") or lesson.limit(f"bench.{which}.{kind}")
        if limit is not None and size.magnitude != 0 and not keeps(size, limit):
            yield _problem(name, amount, spot, limit)


def _problem(name: str, amount: Amount, spot: Spot, limit: Limit) -> Problem:
    return Problem(
        spot,
        f"{name} is {amount}, which is not of a size that a bench holds",
        found=str(amount),
        needed=limit.in_words,
        mend="look for a slip in the unit or the prefix",
        whose=whose(limit),
    )
