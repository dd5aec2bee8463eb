"""The register says of each source what its nuclide really gives off.

Why: what a source gives off decides what stops it and what can count it. A gamma emitter put down as a beta
source is shielded with paper and looked for with the wrong tube.

Wrong:
    sources:
      N-2: {emits: beta}

Right:
    sources:
      N-2: {emits: [gamma, alpha]}

Whose: physics, by the cited tables.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.department import Source
from clampstand.model.nuclide import Nuclide
from clampstand.units import Quantity, is_under, q, quantity

ID = "emission-matches"
SEVERITY = Severity.STOP
SOFTEST = q("20 keV")
"""Softer photons hardly leave a capsule."""
SELDOM = quantity(0.01, "1/decay")
"""Gamma rays in fewer than one decay in a hundred need not be listed; a convention of this handbook."""
GIVES = {"alpha": ("alpha",), "beta": ("beta", "positron"), "gamma": ("gamma", "x", "annihilation")}
"""What the register says → the kinds of emission it may mean."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every source, with the progeny that are said to be in it."""
    for source in book.sources.values():
        names = (source.nuclide, *source.in_equilibrium_with)
        nuclides = [book.nuclides[name] for name in names if name in book.nuclides]
        if len(nuclides) == len(names):
            yield from _faults(source, nuclides)


def _faults(source: Source, nuclides: list[Nuclide]) -> Iterator[Problem]:
    real = [kind for kind in GIVES if any(n.emitted(name) for n in nuclides for name in GIVES[kind])]
    photons = sum((_hard(nuclide) for nuclide in nuclides), 0 * SELDOM)
    wrong = [f"no {kind} radiation, and the register says so" for kind in source.emits if kind not in real]
    if "gamma" not in source.emits and not is_under(photons, SELDOM):
        wrong.append("gamma radiation, and the register does not say so")
    for fault in wrong:
        yield Problem(
            source.at("emits"),
            f"{source.id}: {', '.join(n.id for n in nuclides)} gives off {fault}",
            found=", ".join(source.emits),
            needed=", ".join(real),
            mend="look at the certificate for the nuclide, then write what leaves the source",
            whose=Whose(Layer.PHYSICS, f"emissions of {source.nuclide}", spot=nuclides[0].spot),
        )


def _hard(nuclide: Nuclide) -> Quantity:
    """Photons per decay that matter outside a capsule."""
    lines = (line.per_decay for line in nuclide.photons if not is_under(line.energy, SOFTEST))
    return sum(lines, 0 * SELDOM)
