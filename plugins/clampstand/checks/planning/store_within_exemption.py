"""What is kept without a permit is no more than the packs in force let anybody keep without one.

Why: above the exempt activity a source must be notified, registered or licensed, and an inspector asks for
the paper. Sources add up: each a small part of its limit, and together more than one. Where the limit is
law it is a stop, where it is guidance a warning.

Wrong:
    limits:
      radiation.exempt-activity:
        layer: law
        waivable: no
        at_most: 100 kBq
        combine: sum of fractions
        applies_to: {nuclide: Cs-137}
        with_progeny: Ba-137m
    sources:
      N-2: {permit: PL-7}
      N-3: {permit: PL-7}

Right:
    sources:
      N-1: {permit: PL-7}

Whose: the law or the guidance of the place, each pack by itself.
"""

from collections.abc import Iterator

from clampstand.calculators.share_of_limits import Share, covers_nuclides, shares
from clampstand.calculators.worked import CannotWork
from clampstand.findings import Problem, Severity
from clampstand.limits import whose
from clampstand.model.book import Book
from clampstand.units import digits

ID = "store-within-exemption"
SEVERITY = Severity.STOP


def check_book(book: Book) -> Iterator[Problem]:
    """Every pack in force that has such limits; activities are those of the handbook's day."""
    for pack in book.packs_in_force:
        if not covers_nuclides(pack):
            continue
        try:
            found = [share for share in shares(book, pack) if share.limit in book.limits_in_force]
        except CannotWork:
            continue  # a source whose activity is not known is the matter of another rule
        summed = [share for share in found if share.limit.combine == "sum of fractions"]
        if summed and sum(share.today for share in summed) > 1 + 1e-9:
            yield _problem(summed, pack.title)
        for share in found:
            if share.limit.combine == "each" and share.today > 1 + 1e-9:
                yield _problem([share], pack.title)


def _problem(found: list[Share], title: str) -> Problem:
    total = digits(sum(share.today for share in found), 3, "up")
    worst = max(found, key=lambda share: share.today)
    parts = ", ".join(f"{share.source.id} {digits(share.today, 3, 'up')}" for share in found)
    holds = "the sources together are" if len(found) > 1 else f"{worst.source.id} is"
    return Problem(
        worst.source.at("activity"),
        f"{holds} {total} times what may be kept without a permit ({title})",
        found=f"Σ A/L = {total}: {parts}",
        needed="at most 1" if len(found) > 1 else worst.limit.in_words,
        mend="name the permit of each source that has one (permit:), or ask the radiation adviser for one",
        whose=whose(worst.limit),
        severity=None if worst.limit.layer == "law" else Severity.WARNING,
    )
