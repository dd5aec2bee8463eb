"""How long reading and checking take: the demo as it is, then with up to a thousand practicals.

Run by hand, on a quiet machine: ``python tests/benchmarks/bench_checks.py``. The practicals are the demo's
over and over, under new ids and titles. What counts is CPU time after the imports, from the files to the
findings: against a goal of 50 ms a practical, and of a cost that grows with their number and no faster.
"""

import math
import re
import shutil
import sys
import tempfile
import time
from itertools import cycle
from pathlib import Path

from clampstand.build import handbook

CONTENT = Path(__file__).parents[2] / "content"
SIZES = (250, 500, 1000)
MOST_EACH = 50.0
"""Milliseconds a practical."""
STEEPEST = 1.1
_TITLE = re.compile(r"^title: .*$", re.MULTILINE)


def main() -> int:
    """Print every size's time, and fail where a goal is missed."""
    times = {size: seconds(size) for size in (0, *SIZES)}
    demo = len(list((CONTENT / "practicals").glob("*.yml")))
    print(f"{'practicals':>10} {'s':>6} {'ms each':>8}")
    for size, time_taken in times.items():
        print(f"{demo + size:>10} {time_taken:>6.2f} {1000 * time_taken / (demo + size):>8.1f}")
    first, last = SIZES[0], SIZES[-1]
    growth = math.log(times[last] / times[first]) / math.log((demo + last) / (demo + first))
    print(f"growth exponent from {demo + first} to {demo + last}: {growth:.2f}")
    return int(1000 * times[0] / demo > MOST_EACH or growth > STEEPEST)


def seconds(size: int) -> float:
    """The CPU time for the demo with so many practicals more."""
    with tempfile.TemporaryDirectory() as folder:
        content = Path(folder) / "content"
        shutil.copytree(CONTENT, content)
        patterns = cycle(sorted((CONTENT / "practicals").glob("*.yml")))
        for number, pattern in zip(range(size), patterns, strict=False):
            copy = _TITLE.sub(f"title: Practical {number}", pattern.read_text(encoding="utf-8"), count=1)
            (content / f"practicals/copy-{number}.yml").write_text(copy, encoding="utf-8")
        begun = time.process_time()
        judged = handbook(content)
        taken = time.process_time() - begun
    if judged.stops:
        sys.exit("the copies are stopped, so there is nothing to measure")
    return taken


if __name__ == "__main__":
    sys.exit(main())
