"""A limit takes the place only of one that is there, and of no higher layer than its own.

Why: the rule of a region takes the place of the rule of its country. A local rule that took the place of a
law would make the law vanish from the page; and one that takes the place of nothing is a slip of the pen.

Wrong:
    limits:
      electrical.voltage: {supersedes: land}

Right:
    limits:
      house/electrical.current (dc): {layer: law, citation: land-law, waivable: no, supersedes: land}

Whose: this handbook: the more special rule of the same layer comes before the general one.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.limit import Limit

ID = "supersedes-its-like"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a limit takes the place of one of its own layer or of one that binds less")

_BINDING = ("local rule", "guidance", "law")
"""The layers, the one that binds least first."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit of every pack that names one it takes the place of."""
    for pack in book.packs.values():
        for limit in pack.limits:
            if limit.supersedes is None or limit.supersedes not in book.packs:
                continue
            others = book.packs[limit.supersedes].limits
            before = [other for other in others if other.holds_for == limit.holds_for]
            if not before:
                there = f"a limit of {limit.key} for the same circumstances in {limit.supersedes}"
                yield _problem(limit, "takes the place of a limit that is not there", there)
            elif _rank(limit) < max(map(_rank, before)):
                yield _problem(
                    limit, f"is a {limit.layer} and takes the place of {before[0].layer}", limit.layer
                )


def _rank(limit: Limit) -> int:
    return _BINDING.index(limit.layer)


def _problem(limit: Limit, what: str, needed: str) -> Problem:
    return Problem(
        limit.at("supersedes"),
        f"{limit.key} {what}",
        found=f"supersedes: {limit.supersedes}",
        needed=needed,
        mend="take supersedes out; the strictest limit in force holds anyway",
        whose=RULE,
    )
