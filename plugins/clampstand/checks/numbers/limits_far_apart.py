"""Law and guidance on one thing, both in force, are of like size.

Why: states copy their limits from one another and from the same committees. If one of two is a thousand times
the other, somebody wrote a wrong prefix; the strictest holds, and it may be the one that is wrong.

Wrong:
    limits:
      house/electrical.stored-charge: {at_most: 45 mC, layer: guidance}

Right:
    limits:
      house/electrical.stored-charge: {at_most: 0.1 mC, layer: guidance}

Whose: this handbook; that limits of one thing differ by less than five times is common practice.
"""

from collections.abc import Iterator
from itertools import combinations

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import sort_of
from clampstand.model.base import is_same_value
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.units import is_over

ID = "limits-far-apart"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what is limited twice is limited alike")
APART = 5
NO_RATIO = ("temperature", "sound level")
"""Kinds of which twice as much means nothing."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every two limits of one key and one set of circumstances, but for local rules and sums of parts."""
    for of_key in book.limits_of_key.values():
        binding = [limit for limit in of_key if limit.layer != "local rule" and limit.combine == "each"]
        for first, second in combinations(binding, 2):
            if first.holds_for == second.holds_for and (what := _apart(first, second)):
                yield _problem(first, second, what)


def _apart(first: Limit, second: Limit) -> str:
    """In what two limits differ more than two of one thing do; nothing where they don't."""
    if sort_of(first) != sort_of(second) or first.amount is None or second.amount is None:
        return ""
    one, other, kind = first.amount.value, second.amount.value, first.amount.kind
    if kind not in NO_RATIO and (is_over(one, APART * other) or is_over(other, APART * one)):
        return f"more than {APART} times apart"
    alike = is_same_value(first.averaged_over, second.averaged_over)
    return "" if alike else "taken over other times"


def _problem(first: Limit, second: Limit, what: str) -> Problem:
    return Problem(
        first.at(first.comparator),
        f"{first.title}: the limits of {_in_full(first)} and {_in_full(second)} are {what}",
        found=_in_full(first),
        needed=f"about {_in_full(second)}",
        mend="look both up again, the unit and the prefix above all",
        whose=RULE,
        related=((second.at(second.comparator), "the other one"),),
    )


def _in_full(limit: Limit) -> str:
    over = f" averaged over {limit.averaged_over}" if limit.averaged_over else ""
    return f"{limit.in_words}{over} ({limit.id.partition('/')[0]})"
