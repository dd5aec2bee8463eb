"""How long a hundred cards take as PDF, in one file: against a goal of 5 s.

Run by hand, on a quiet machine: ``python tests/benchmarks/bench_cards.py``. The cards are the demo's
practicals over and over, under other titles; what counts is the CPU time of the process, from what was
worked out to the bytes of the file. The demo's practicals, each in a file of its own, are timed first.
"""

import sys
import time
from collections.abc import Callable
from itertools import cycle, islice
from pathlib import Path

from clampstand.build import sheets
from clampstand.checks.engine import lessons_of
from clampstand.reading import read
from clampstand.rendering.contents import Contents
from clampstand.rendering.pdf.data import practical_data
from clampstand.rendering.pdf.printing import as_pdf

CONTENT = Path(__file__).parents[2] / "content"
CARDS = 100
GOAL = 5.0


def seconds(work: Callable[[], object]) -> float:
    """The CPU time of a piece of work."""
    begun = time.process_time()
    work()
    return time.process_time() - begun


def many(contents: Contents) -> bytes:
    """A hundred cards in one file."""
    practicals = islice(cycle(contents.book.practicals.values()), CARDS)
    cards = [
        practical_data(practical, contents) | {"title": f"{practical.title} {number}"}
        for number, practical in enumerate(practicals)
    ]
    return as_pdf(cards, contents.day, "a4")


def each(contents: Contents) -> None:
    """A file for every practical of the demo."""
    for practical in contents.book.practicals.values():
        as_pdf([practical_data(practical, contents)], contents.day, "a4")


def main() -> int:
    """Print both times and fail where the hundred miss the goal."""
    book = read(CONTENT).book
    if book is None:
        print("the content could not be read", file=sys.stderr)
        return 2
    contents = Contents(book, sheets(lessons_of(book)))
    alone, together = seconds(lambda: each(contents)), seconds(lambda: many(contents))
    print(f"{together:5.2f} s  {CARDS} cards in one file{'  over the goal' if together > GOAL else ''}")
    print(f"{alone:5.2f} s  {len(book.practicals)} cards, each a file")
    return 1 if together > GOAL else 0


if __name__ == "__main__":
    sys.exit(main())
