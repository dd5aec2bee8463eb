"""A limit that is law cannot be waived.

Why: a department may allow itself an exception to its own rules, and with reasons to guidance. Nobody in a
school may allow an exception to the law, and a page must not look as if somebody did.

Wrong:
    limits:
      electrical.stored-charge: {waivable: yes}

Right:
    limits:
      electrical.stored-charge: {layer: guidance, waivable: yes}

Whose: this handbook: law, guidance and local rule are different things.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "law-not-waivable"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "law is never waived")


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit of every pack that was read, in force or not."""
    for pack in book.packs.values():
        for limit in pack.limits:
            if limit.layer == "law" and limit.waivable == "yes":
                yield Problem(
                    limit.at("waivable"),
                    f"{limit.key} is law, and nobody can waive it",
                    found="waivable: yes, written or left out",
                    needed="waivable: no",
                    mend="write waivable: no",
                    whose=RULE,
                )
