"""A limit is of a layer that its citation can carry: law rests on a statute, and no guidance on mere custom.

Why: a teacher who is told that something is the law does it differently from one who is told that it is
custom. If the wrong one is written, or the wrong citation, nobody can look it up.

Wrong:
    limits: {radiation.forceps-length: {layer: law, waivable: no}}

Right:
    limits: {radiation.forceps-length: {layer: law, waivable: no, citation: land-law}}

Whose: this handbook: law, guidance and local rule always look different.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "layer-of-citation"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "law rests on a statute, guidance on something published")
CARRIED_BY = {
    "law": ("statute",),
    "guidance": ("statute", "standard", "handbook", "data set", "paper", "web page"),
}
"""Layer → the kinds of citation it may rest on. A local rule may take over what it likes."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit in force against its citation."""
    for limit in book.limits_in_force:
        citation = book.citations.get(limit.citation)
        kinds = CARRIED_BY.get(limit.layer, ())
        if citation is not None and kinds and citation.kind not in kinds:
            yield Problem(
                limit.at("layer"),
                f"{limit.title} is {limit.layer}, and {limit.citation} is {citation.kind}",
                found=f"layer: {limit.layer}, citation: {limit.citation}",
                needed=f"a citation that is {' or '.join(kinds)}",
                mend="write the layer it has, or the source it was read in",
                whose=RULE,
                related=((citation.spot, "what it cites"),),
            )
