"""How long the worked numbers of one practical take: every one of the demo's, against a goal of 5 ms.

Run by hand, on a quiet machine: ``python tests/benchmarks/bench_numbers.py``. The quickest of several rounds
counts, in CPU time, once the content has been read. The first column is for a book that has worked out
nothing yet, and is what the goal is for; the second is for the same practical again, when what its sources
and steps settle for the whole book is known.
"""

import sys
import time
from dataclasses import replace
from pathlib import Path

from clampstand.calculators import CALCULATORS
from clampstand.calculators.sheet import work_out
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.reading import read

CONTENT = Path(__file__).parents[2] / "content"
GOAL = 5.0
ROUNDS = 15


def milliseconds(practical: Practical, book: Book) -> float:
    """How long the numbers of a practical take out of a book as it is."""
    begun = time.process_time()
    work_out(practical, book, CALCULATORS)
    return 1000 * (time.process_time() - begun)


def first_and_again(practical: Practical, book: Book) -> tuple[float, float]:
    """The quickest of the rounds, with a new book and with the same one again."""
    books = [replace(book) for _ in range(ROUNDS)]
    first = min(milliseconds(practical, new) for new in books)
    return first, min(milliseconds(practical, known) for known in books)


def main() -> int:
    """Print every practical's times, slowest first, and fail where one misses the goal."""
    book = read(CONTENT).book
    if book is None:
        print("the content could not be read", file=sys.stderr)
        return 2
    for practical in book.practicals.values():
        work_out(practical, book, CALCULATORS)
    times = {name: first_and_again(practical, book) for name, practical in book.practicals.items()}
    for name, (first, again) in sorted(times.items(), key=lambda one: -one[1][0]):
        print(f"{first:6.2f} ms {again:6.2f} ms  {name}{'  over the goal' if first > GOAL else ''}")
    return 1 if max(first for first, _ in times.values()) > GOAL else 0


if __name__ == "__main__":
    sys.exit(main())
