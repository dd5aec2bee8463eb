"""An item that is called after a substance is of that substance.

Why: concentrations, vapour and gas are worked out with the figures of the substance an item names. With the
neighbour's figures the bottle on the shelf is labelled right, and is made up wrong.

Wrong:
    kit: {thin-spirit: {substance: carbon-dioxide}}

Right:
    kit: {thin-spirit: {substance: propan-2-ol}}

Whose: this handbook: an item is named by what it is.
"""

import re
from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.kit import Item
from clampstand.model.substance import Substance

ID = "substance-by-name"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "an item is of the substance it is called after")
_EXPLAINED = re.compile(r"\(.*?\)|,.*| with(?:out)? .*")
"""What stands behind a substance's bare name: its charge, its form, its composition."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every item with a substance whose own name is the name of another."""
    names = {substance.id: bare_name(substance) for substance in book.substances.values()}
    for item in book.kit.values():
        own = item.substance
        if own is None or own not in names or _is_called(item, names[own]):
            continue
        called = [other for other, name in names.items() if _is_called(item, name)]
        if called:
            other = book.substances[max(called, key=lambda each: len(names[each]))]
            yield _problem(item, book.substances[own], other)


def bare_name(substance: Substance) -> str:
    """The name of a substance without what explains it: ``copper sulfate``."""
    return " ".join(_EXPLAINED.sub("", substance.name).casefold().split())


def _is_called(item: Item, name: str) -> bool:
    called = " ".join(item.name.casefold().split())
    return re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", called) is not None


def _problem(item: Item, own: Substance, other: Substance) -> Problem:
    return Problem(
        item.at("substance"),
        f"{item.name} is called after {other.name}, and its figures are those of {own.name}",
        found=f"substance: {own.id}",
        needed=f"substance: {other.id}",
        mend=f"write {other.id}, or call the item after what it is",
        whose=RULE,
        related=((other.spot, "the substance of its name"),),
    )
