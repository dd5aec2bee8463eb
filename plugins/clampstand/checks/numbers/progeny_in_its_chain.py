"""What a source holds in equilibrium comes of its nuclide's decay, step by step.

Why: the radiation, the dose and the limit of a source are worked out with its progeny. One that cannot come
of its nuclide is a slip in one of the two names, and everything worked out from it is of another source.
What lies between the two has the same activity, and is in it too.

Wrong:
    sources: {N-4: {in_equilibrium_with: Cs-137}}

Right:
    sources: {N-4: {in_equilibrium_with: Y-90}}

Whose: physics, by the cited tables.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "progeny-in-its-chain"
SEVERITY = Severity.STOP


def check_book(book: Book) -> Iterator[Problem]:
    """Every source with progeny, against the decays of the reference figures."""
    for source in book.sources.values():
        there = (source.nuclide, *source.in_equilibrium_with)
        known = [book.nuclides[name] for name in there if name in book.nuclides]
        if len(known) < len(there):
            continue
        daughters = {name for nuclide in known for name in nuclide.progeny}
        for number, name in enumerate(source.in_equilibrium_with):
            if name not in daughters:
                yield Problem(
                    source.at("in_equilibrium_with", number),
                    f"{source.id}: {name} comes of the decay of nothing that is in it",
                    found=name,
                    needed=f"a daughter of {' or '.join(there)}",
                    mend="look at the certificate for the nuclide, and name what lies between it and this",
                    whose=Whose(Layer.PHYSICS, f"the decay of {source.nuclide}", spot=known[0].spot),
                )
