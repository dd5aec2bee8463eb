"""A limit is stated in the only way that makes sense for it: a distance from below, a current from above.

Why: a distance written as at most, or a current written in volts, limits nothing. The page would print it in
good order, and every value would pass.

Wrong:
    limits:
      radiation.hand-to-source: {at_least: (left out), at_most: 100 mm}

Right:
    limits:
      radiation.hand-to-source: {at_least: 0.1 m}

Whose: this handbook: what a limit means must not be guessed.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import CEILING, FLOOR, Sort, expected_sort, sort_of
from clampstand.model.book import Book
from clampstand.units import KINDS

ID = "limit-of-its-sort"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "every limit of one key is stated in the same way")


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit in force against the sort its key asks for."""
    for limit in book.limits_in_force:
        sort = expected_sort(limit.key, book)
        if sort is not None and sort_of(limit) != sort:
            yield Problem(
                limit.at(limit.comparator),
                f"{limit.key} cannot be limited by {limit.in_words}",
                found=f"{limit.comparator}: {limit.value}",
                needed=_in_words(sort),
                mend=f"write {_in_words(sort)}",
                whose=RULE,
            )


def _in_words(sort: Sort) -> str:
    """How a limit of a sort is written."""
    stated, kind = sort
    comparator = {FLOOR: "at_least", CEILING: "at_most"}.get(stated, stated)
    return f"{comparator}: {KINDS[kind].example}" if kind else comparator
