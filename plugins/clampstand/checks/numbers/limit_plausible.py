"""No limit is set where nothing can ever be: below zero, above a hundred per cent, below the air outdoors.

Why: a slip of a prefix in a limit is worse than one in a practical. Either everything fails and people learn
to look away, or everything passes and nobody notices.

Wrong:
    limits:
      air.carbon-dioxide-8h: {at_most: 0.5 ppm}

Right:
    limits:
      air.carbon-dioxide-8h: {at_most: 0.5 %}

Whose: physics.
"""

from collections.abc import Iterator

from clampstand.checks.gas import DANGEROUS
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import CEILING, sort_of, the_limit
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.units import Amount, is_over, is_under, q, quantity

ID = "limit-plausible"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "a limit is a value that can occur")
OF_THE_AIR = "air.carbon-dioxide"
"""How the keys of limits on carbon dioxide in breathed air begin."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit of every pack that is a quantity."""
    for pack in book.packs.values():
        for limit in pack.limits:
            fault = _fault(limit, limit.amount, book) if limit.amount is not None else ""
            if fault:
                yield Problem(
                    limit.at(limit.comparator),
                    f"{limit.title}: {limit.in_words} is {fault}",
                    found=f"{limit.amount}",
                    needed="a value that can occur",
                    mend="look for a slip in the unit: per cent for ppm, or a prefix",
                    whose=RULE,
                )


def _fault(limit: Limit, amount: Amount, book: Book) -> str:
    if amount.kind == "temperature":
        return "below absolute zero" if is_under(amount.low, quantity(0, "K")) else ""
    if not is_over(amount.low, 0 * amount.low):
        return "not above zero"
    if amount.kind == "fraction" and is_over(amount.high, q("100 %")):
        return "more than the whole"
    of_the_air = limit.key.startswith(OF_THE_AIR) and amount.kind == "fraction"
    return _beyond_breathing(limit, amount, book) if of_the_air and sort_of(limit)[0] == CEILING else ""


def _beyond_breathing(limit: Limit, amount: Amount, book: Book) -> str:
    outdoors, deadly = book.department.outdoor_carbon_dioxide, the_limit(DANGEROUS, book)
    if is_under(amount.high, outdoors.value):
        return f"less than the {outdoors} that the air outdoors has"
    if limit.key != DANGEROUS and deadly and deadly.amount and is_over(amount.high, deadly.amount.high):
        return f"more than the {deadly.amount} that is dangerous to life"
    return ""
