"""The department has chosen at least one pack of law or guidance.

Why: local rules alone are a department's opinion. Without a pack of the place nothing is checked against
the law, and every page would look as if it had been.

Wrong:
    limits:
      land/*: {layer: local rule, waivable: yes}

Right:
    limits:
      land/*: {layer: guidance, waivable: yes}

Whose: this handbook: a place without law is a place nobody looked up.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "jurisdiction-chosen"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "the law or the guidance of a place is in force")


def check_book(book: Book) -> Iterator[Problem]:
    """The packs in force: one of them must hold more than local rules."""
    if any(limit.layer != "local rule" for limit in book.limits_in_force):
        return
    known = (name for name, pack in book.packs.items() if any(x.layer != "local rule" for x in pack.limits))
    yield Problem(
        book.department.at("packs"),
        "no pack of law or guidance is in force",
        found=", ".join(book.department.packs) or "no pack at all",
        needed="a pack of the place",
        mend=f"add the pack of your place to packs: {', '.join(known) or 'there is none yet, so write one'}",
        whose=RULE,
    )
