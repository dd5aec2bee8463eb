"""A number that keeps to its limit keeps to it by less than ten times, or says that it is meant so.

Why: a limit finds a slip on one side only. Two minutes instead of twenty keep to it just as well, and so does
a distance of ten metres instead of one. The lesson then cannot be done as the page says, and people do it as
they please.

Wrong:
    source bench:
      numbers:
        time out: {value: 2 min, obeys: radiation.time-out}

Right:
    source bench:
      numbers:
        time out: {value: 2 min, may_be: 1 min to 3 min, obeys: radiation.time-out}

Whose: common practice: what is done lies near what is allowed, or on purpose far from it.
"""

from collections.abc import Iterator

from clampstand.checks.holding import worked_out
from clampstand.checks.ranges import TOO_FAR, far_apart
from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import so_throughout, voltages_used
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import keeps
from clampstand.model.limit import Limit
from clampstand.model.step import Number
from clampstand.units import Amount, UnlikeUnits

ID = "near-its-limit"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a number far from its limit says that it is meant so")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every declared number that names a limit, unless it says its range, is worked out, or is in degrees.

    A voltage that a supply is set to is left out: what it feeds decides, and some need little.
    """
    practical = lesson.practical
    bare = {name: number for name, number in practical.numbers.items() if _is_bare(number)}
    so = so_throughout(lesson) if bare else {}
    others = worked_out(practical) | {name for _, name, _, _ in voltages_used(lesson)} if bare else set()
    for name in sorted(bare.keys() - others):
        number = bare[name]
        limit = lesson.limit(number.obeys or "", **so)
        if limit is None or limit.amount is None or not _keeps(number.value, limit):
            continue
        if far_apart(number.value, limit.amount):
            yield Problem(
                practical.at("numbers", name, "value"),
                f"{name} is {number.value}, and its limit is {limit.in_words}",
                found=str(number.value),
                needed=f"less than {TOO_FAR} times apart, or a range",
                mend="look for a slip in the number; if it is meant, write may_be: with the range that works",
                whose=RULE,
                related=((limit.spot, "the limit"),),
            )


def _is_bare(number: Number) -> bool:
    has_range = number.may_be is not None or number.lies_in is not None
    return number.obeys is not None and not has_range and number.value.kind != "temperature"


def _keeps(amount: Amount, limit: Limit) -> bool:
    """Whether both ends keep to the limit; what doesn't, and what is of another kind, is told elsewhere."""
    try:
        return keeps(amount.low, limit) and keeps(amount.high, limit)
    except (UnlikeUnits, TypeError):
        return False
