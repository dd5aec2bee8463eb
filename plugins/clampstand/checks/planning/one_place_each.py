"""Every source has a place and a serial number of its own, and is counted where the register has it.

Why: a count goes from place to place. Two sources in one place are counted as one, and one that stands where
the register does not say is taken for another.

Wrong:
    sources:
      N-2: {position: "store, place 1"}

Right:
    sources:
      N-2: {position: "store, place 3"}

Whose: the department's own rule; an inventory with locations is law in most places.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.department import Source

ID = "one-place-each"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a place in the store and a serial number belong to one source")


def check_book(book: Book) -> Iterator[Problem]:
    """Every source that is still here, against those before it and against its newest count."""
    here = [source for source in book.sources.values() if source.status != "disposed of"]
    for name in ("position", "serial"):
        first: dict[str, Source] = {}
        for source in here:
            other = first.setdefault(_plain(getattr(source, name)), source)
            if other is not source:
                yield _same(source, other, name)
    for source in here:
        yield from _counted_elsewhere(source, book)


def _plain(text: str) -> str:
    return " ".join(text.casefold().split())


def _same(source: Source, other: Source, name: str) -> Problem:
    return Problem(
        source.at(name),
        f"{source.id} has the {name} of {other.id}",
        found=getattr(source, name),
        needed=f"a {name} of its own",
        mend="look at both and correct the register",
        whose=RULE,
        related=((other.at(name), "written here too"),),
    )


def _counted_elsewhere(source: Source, book: Book) -> Iterator[Problem]:
    rows = [row for row in book.source_counts.values() if row.source == source.id and row.seen]
    newest = max(rows, key=lambda row: row.date, default=None)
    if newest is not None and _plain(newest.position) != _plain(source.position):
        yield Problem(
            newest.at("position"),
            f"{source.id} was counted at another place than the register says",
            found=newest.position,
            needed=source.position,
            mend="put it back in its place, or correct the register, and count again",
            whose=RULE,
            related=((source.at("position"), "its position in the register"),),
        )
