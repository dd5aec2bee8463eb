"""The results of all edits as a table: by sort, and what is let through by its reason."""

from collections import Counter

from mutation.judge import Judged
from mutation.survivors import explained, patterns

HEAD = """\
| sort of edit | tried | caught | harmless | gaps | of these told | caught of what does harm |
|---|---:|---:|---:|---:|---:|---:|
"""


def verdicts(results: list[Judged]) -> Counter[tuple[str, str]]:
    """Sort and what came of it (``caught``, ``harmless``, ``gap`` or ``unexplained``) → how many."""
    count: Counter[tuple[str, str]] = Counter()
    for each in results:
        count[each.sort, verdict_of(each)] += 1
    return count


def verdict_of(each: Judged) -> str:
    """What came of one edit."""
    pattern = None if each.caught else explained(each)
    return "caught" if each.caught else pattern.verdict if pattern else "unexplained"


def shares(results: list[Judged]) -> dict[str, float]:
    """Sort → the part of the edits that could do harm which some rule catches."""
    count = verdicts(results)
    sorts = sorted({sort for sort, _ in count})
    harmful = {
        sort: count[sort, "caught"] + count[sort, "gap"] + count[sort, "unexplained"] for sort in sorts
    }
    return {sort: count[sort, "caught"] / harmful[sort] for sort in sorts if harmful[sort]}


def untold(results: list[Judged]) -> list[Judged]:
    """The gaps of which whoever reviews the change is not told either."""
    return [each for each in results if not each.told and verdict_of(each) in ("gap", "unexplained")]


def table(results: list[Judged]) -> str:
    """A line for each sort, then one for all."""
    count, part = verdicts(results), shares(results)
    missed = Counter(each.sort for each in untold(results))
    lines = []
    for sort in sorted({sort for sort, _ in count}):
        row = [count[sort, verdict] for verdict in ("caught", "harmless", "gap")]
        tried = sum(number for (of, _), number in count.items() if of == sort)
        told, share = row[2] - missed[sort], _per_cent(part.get(sort))
        lines.append(f"| {sort} | {tried} | {row[0]} | {row[1]} | {row[2]} | {told} | {share} |")
    sums = [
        sum(n for (_, of), n in count.items() if of == verdict) for verdict in ("caught", "harmless", "gap")
    ]
    share = sums[0] / (sums[0] + sums[2])
    told = sums[2] - missed.total()
    lines.append(
        f"| **all** | {len(results)} | {sums[0]} | {sums[1]} | {sums[2]} | {told} | {_per_cent(share)} |"
    )
    return HEAD + "\n".join(lines) + "\n"


def reasons(results: list[Judged]) -> str:
    """What is let through, by its reason, the most frequent first."""
    count = Counter(pattern for each in results if not each.caught and (pattern := explained(each)))
    ordered = sorted(patterns(), key=lambda pattern: (pattern.verdict, -count[pattern], pattern.why))
    return "".join(
        f"- {count[pattern]} {pattern.verdict}, {pattern.sort if pattern.sort != '.*' else 'every sort'}: "
        f"{' '.join(pattern.why.split())}\n"
        for pattern in ordered
        if count[pattern]
    )


def _per_cent(part: float | None) -> str:
    return "" if part is None else f"{100 * part:.0f} %"
