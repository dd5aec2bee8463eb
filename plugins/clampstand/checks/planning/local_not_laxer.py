"""A local rule is never laxer than the law or the guidance in force for the same thing.

Why: people keep to the number on the page. A local rule that allows more than the law reads like leave to
break it, although the checks use the stricter of the two.

Wrong:
    limits:
      house/radiation.watchers-to-source: {at_least: 0.9 m}

Right:
    limits:
      house/radiation.watchers-to-source: {at_least: 1 m}

Whose: this handbook: a stricter local rule always, a laxer one never.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import is_laxer, sort_of
from clampstand.model.book import Book
from clampstand.model.limit import Limit

ID = "local-not-laxer"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a local rule may be stricter than law and guidance, and never laxer")


def check_book(book: Book) -> Iterator[Problem]:
    """Every local rule against all law and guidance that holds wherever it does."""
    others = [limit for limit in book.limits_in_force if limit.layer != "local rule"]
    for local in (limit for limit in book.limits_in_force if limit.layer == "local rule"):
        laxer_than = [other for other in others if _holds_there_too(other, local) and is_laxer(local, other)]
        if laxer_than:
            yield _problem(local, laxer_than[0])


def _holds_there_too(other: Limit, local: Limit) -> bool:
    """Whether another limit is of the same thing, and asks for nothing that the local rule does not."""
    same = (other.key, other.averaged_over) == (local.key, local.averaged_over)
    asked = other.applies_to.model_dump(exclude_none=True)
    here = local.applies_to.model_dump(exclude_none=True)
    alike = same and sort_of(other) == sort_of(local)
    return alike and all(here.get(name) == value for name, value in asked.items())


def _problem(local: Limit, other: Limit) -> Problem:
    value = local.comparator
    return Problem(
        local.at(value),
        f"the local rule for {local.key} is laxer than the {other.layer} in force",
        found=local.in_words,
        needed=f"{other.in_words}, or stricter",
        mend="write the stricter value, or take the local rule out",
        whose=RULE,
        related=((other.at(other.comparator), f"{other.layer}: {other.in_words}"),),
    )
