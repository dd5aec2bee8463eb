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

from clampstand.checks.ranges import lies_in, ranged
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Route, Severity, Spot, Whose
from clampstand.limits import keeps, whose
from clampstand.model.limit import Limit
from clampstand.model.practical import Practical
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
    """Every amount, number, rate, ventilation and tolerance, unless its own range tells of the slip."""
    left = {each.route for each in ranged(lesson) if not lies_in(each.value, each.range)}
    for name, amount, route, of in _judged(lesson.practical):
        if route not in left:
            yield from _out_of_bounds(lesson, name, amount, lesson.practical.at(*route), of)


def _judged(practical: Practical) -> Iterator[tuple[str, Amount, Route, str]]:
    """What is judged: what it is, how much, where it is written, and which bounds hold for it."""
    for number, line in enumerate(practical.kit):
        for word in ("amount", "allowance"):
            amount: Amount | None = getattr(line, word)
            if amount is not None:
                yield f"{word} of {line.item}", amount, ("kit", number, word), "amount"
    if practical.needs.room.air_changes is not None:
        route = ("needs", "room", "air_changes")
        yield "what the room must have", practical.needs.room.air_changes, route, "bench"
    for number, release in enumerate(practical.releases):
        if release.rate is not None:
            yield f"the release of {release.item}", release.rate, ("releases", number, "rate"), "bench"
    for name, declared in practical.numbers.items():
        yield name, declared.value, ("numbers", name, "value"), "bench"
    for index, entry in enumerate(practical.expect):
        within = _per_cent(entry.within or "")
        if within is not None:
            yield "the tolerance", within, ("expect", index, "within"), "tolerance"


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
