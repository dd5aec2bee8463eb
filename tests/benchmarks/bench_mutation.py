"""Every systematic wrong edit of the demo content, and what catches it; rewrites tests/mutation/TABLE.md.

Run by hand: ``PYTHONPATH=tests python tests/benchmarks/bench_mutation.py``. It takes some minutes.
"""

import sys
import time
from pathlib import Path

from mutation.report import reasons, table, verdicts
from mutation.run import run

TABLE = Path(__file__).parents[1] / "mutation" / "TABLE.md"
INTRODUCTION = """\
# What the checks catch

Every edit is one slip in the demo department's content, made by a program: each quantity scaled and its
prefix changed, each step emptied, swapped with the next or robbed of a word, each name misspelt and
exchanged for its neighbour, each day pushed by ten years, each yes made no. It counts as caught when the
schema, the names or some rule finds more than before. What is let through is harmless, or it is a gap;
`survivors.yml` says why for every one. A gap is told when `clampstand changes` names it to whoever reviews
the change. Written by `tests/benchmarks/bench_mutation.py`.

"""


def main() -> int:
    """Runs all edits and writes the table; fails where a survivor has no reason."""
    start = time.monotonic()
    results = run()
    TABLE.write_text(
        f"{INTRODUCTION}{table(results)}\n## What is let through\n\n{reasons(results)}", encoding="utf-8"
    )
    print(table(results))
    print(f"{len(results)} edits in {time.monotonic() - start:.0f} s")
    return int(any(verdict == "unexplained" for _, verdict in verdicts(results)))


if __name__ == "__main__":
    sys.exit(main())
