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


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every declared number that names a limit, but for those that a rule of their own judges."""
    practical = lesson.practical
    voltages = {name for _, name, _, _ in voltages_used(lesson)}
    so = so_throughout(lesson)
    for name, number in practical.numbers.items():
        if number.obeys is None or number.obeys in LIMITED.values() or name in voltages:
            continue
        limit = lesson.limit(number.obeys, **so)
        if limit is not None and not _keeps(number.value, limit):
            yield Problem(
                practical.at("numbers", name, "value"),
                f"{name} is {number.value}, and says that it obeys {number.obeys}",
                found=str(number.value),
                needed=limit.in_words,
                mend="change the number, or what is done",
                whose=whose(limit),
            )


def _keeps(amount: Amount, limit: Limit) -> bool:
    """Whether both ends of an amount keep to a limit; one of another kind does not."""
    try:
        return keeps(amount.low, limit) and keeps(amount.high, limit)
    except (UnlikeUnits, TypeError):
        return False
