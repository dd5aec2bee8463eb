"""A source brings the hazards of radiation that every other source brings.

Why: a practical must list what its sources bring, and only what they bring. A source that has lost a hazard
of radiation, or has another thing in its place, takes it off the page of every lesson that uses it alone.

Wrong:
    sources: {N-3: {hazards: high-voltage}}

Right:
    sources: {N-3: {hazards: [high-voltage, radiation]}}

Whose: this handbook: sources differ in strength, and not in what radiation does.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.department import Source

ID = "source-hazards-alike"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what one source brings by its radiation, every source brings")
FEWEST = 2
"""How many others must agree before one is said to differ from all."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every source, against what all the others bring."""
    for source in book.sources.values():
        others = [other for other in book.sources.values() if other is not source]
        for name in _brought_by_all(others, book) if len(others) >= FEWEST else ():
            if name not in source.hazards:
                hazard = book.hazards[name]
                yield Problem(
                    source.at("hazards"),
                    f"{source.id} does not bring {hazard.name}, as every other source does",
                    found=", ".join(source.hazards) or "no hazards",
                    needed=name,
                    mend=f"write {name} under its hazards",
                    whose=RULE,
                    related=((others[0].at("hazards"), f"what {others[0].id} brings"),),
                )


def _brought_by_all(sources: list[Source], book: Book) -> list[str]:
    """The hazards of radiation that each of some sources brings."""
    known = (name for name in sources[0].hazards if name in book.hazards)
    of_radiation = (name for name in known if book.hazards[name].family == "radiation")
    return [name for name in of_radiation if all(name in source.hazards for source in sources)]
