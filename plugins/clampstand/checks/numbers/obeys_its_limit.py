"""A declared number keeps to the limit it says it obeys.

Why: the number is what the page and the card print. One that is over its limit tells everybody, in good
order and with the limit beside it, to do what is not allowed.

Wrong:
    source bench:
      numbers:
        time out: {value: 25 min, obeys: radiation.time-out}

Right:
    source bench:
      numbers:
        time out: {value: 1200 s, obeys: radiation.time-out}

Whose: whoever set the limit: the law, the guidance or the department.
"""

from collections.abc import Iterator

from clampstand.checks.distances import LIMITED
from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import so_throughout, voltages_used
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.model.limit import Limit
from clampstand.units import Amount, UnlikeUnits

ID = "obeys-its-limit"
SEVERITY = Severity.STOP
_IN_WORDS = {"value": "is", "may_be": "may be"}


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every declared number that names a limit, and its range; rules of their own judge some values."""
    practical = lesson.practical
    voltages = {name for _, name, _, _ in voltages_used(lesson)}
    so = so_throughout(lesson)
    for name, number in practical.numbers.items():
        limit = lesson.limit(number.obeys, **so) if number.obeys else None
        is_judged = number.obeys in LIMITED.values() or name in voltages
        said = {"value": None if is_judged else number.value, "may_be": number.may_be}
        for word, amount in said.items():
            if limit is not None and amount is not None and not _keeps(amount, limit):
                yield _problem(lesson, name, word, amount, limit)
                break


def _problem(lesson: Lesson, name: str, word: str, amount: Amount, limit: Limit) -> Problem:
    return Problem(
        lesson.practical.at("numbers", name, word),
        f"{name} {_IN_WORDS[word]} {amount}, and says that it obeys {limit.key}{_unlike(amount, limit)}",
        found=str(amount),
        needed=limit.in_words,
        mend=f"write what is {limit.in_words}, or change what is done",
        whose=whose(limit),
    )


def _unlike(amount: Amount, limit: Limit) -> str:
    """What an amount of another kind than its limit is told: a letter of a unit is soon mistaken."""
    if limit.amount is None or limit.amount.kind == amount.kind:
        return ""
    return f", which limits a {limit.amount.kind} and not a {amount.kind}"


def _keeps(amount: Amount, limit: Limit) -> bool:
    """Whether both ends of an amount keep to a limit; one of another kind does not."""
    try:
        return keeps(amount.low, limit) and keeps(amount.high, limit)
    except (UnlikeUnits, TypeError):
        return False
