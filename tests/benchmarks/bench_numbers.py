"""How long the worked numbers of one practical take: every one of the demo's, against a goal of 5 ms.

Run by hand, on a quiet machine: ``python tests/benchmarks/bench_numbers.py``. The quickest of several rounds
counts, in CPU time, once the content has been read and every practical has been worked out once: what a
source settles for a whole book is then known, as it is for all practicals but the first.
"""

import sys
import time
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
    """The quickest of the rounds."""
    times = []
    for _ in range(ROUNDS):
        begun = time.process_time()
        work_out(practical, book, CALCULATORS)
        times.append(time.process_time() - begun)
    return 1000 * min(times)


def main() -> int:
    """Print every practical's time, slowest first, and fail where one misses the goal."""
    book = read(CONTENT).book
    if book is None:
        print("the content could not be read", file=sys.stderr)
        return 2
    for practical in book.practicals.values():
        work_out(practical, book, CALCULATORS)
    times = {practical.id: milliseconds(practical, book) for practical in book.practicals.values()}
    for name, taken in sorted(times.items(), key=lambda one: -one[1]):
        print(f"{taken:6.2f} ms  {name}{'  over the goal' if taken > GOAL else ''}")
    return 1 if max(times.values()) > GOAL else 0


if __name__ == "__main__":
    sys.exit(main())
