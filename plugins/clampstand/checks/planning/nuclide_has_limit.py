"""Every nuclide kept without a permit has its limit in each pack that limits nuclides.

Why: a table of what may be kept names nuclides one by one, and what it does not name is not free: it may be
kept under a permit only. A nuclide without a value must never count as unlimited.

Wrong:
    limits:
      radiation.exempt-activity:
        layer: law
        waivable: no
        at_most: 10 MBq
        combine: sum of fractions
        applies_to: {nuclide: Cs-137}
        with_progeny: Ba-137m
    sources:
      N-3: {permit: PL-7}

Right:
    sources:
      N-2: {permit: PL-7}

Whose: the law or the guidance of the place, each pack by itself.
"""

from collections.abc import Iterator

from clampstand.calculators.share_of_limits import EXEMPT, counted, covers_nuclides, unlimited
from clampstand.findings import Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.limit import Pack

ID = "nuclide-has-limit"
SEVERITY = Severity.STOP


def check_book(book: Book) -> Iterator[Problem]:
    """Every source that counts, in every pack in force that says what may be kept of which nuclide."""
    for pack in book.packs_in_force:
        if covers_nuclides(pack):
            for source in counted(book):
                yield from (_problem(source, nuclide, pack) for nuclide in unlimited(source, pack))


def _problem(source: Source, nuclide: str, pack: Pack) -> Problem:
    first = next(limit for limit in pack.limits if limit.key == EXEMPT)
    field = "nuclide" if nuclide == source.nuclide else "in_equilibrium_with"
    return Problem(
        source.at(field),
        f"{source.id}: {pack.title} does not say how much {nuclide} may be kept without a permit",
        found=f"{nuclide}, without a permit",
        needed="a limit for it, or a permit; what is not named is not unlimited",
        mend="name the permit of the source (permit:), or enter the limit with its source if there is one",
        whose=Whose(first.whose, f"{pack.title} limits nuclides one by one", first.citation, first.spot),
        severity=None if first.layer == "law" else Severity.WARNING,
    )
