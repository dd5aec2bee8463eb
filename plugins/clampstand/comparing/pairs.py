"""Which parts of a list are the same before and after, and which of them changed places."""

from bisect import bisect_left
from collections.abc import Sequence
from difflib import SequenceMatcher

Pair = tuple[int | None, int | None]
"""The place of a part before and after; None where it was not there."""

_ALIKE = 0.6
"""How alike two sentences must be to count as one that was reworded."""


def pairs(old: Sequence[str], new: Sequence[str], *, reworded: bool = False) -> list[Pair]:
    """The parts of two lists side by side, in the order of the new one; what went comes last.

    Args:
        old: what each part was called.
        new: what each part is called.
        reworded: whether a name may have been reworded, as the sentence of a step.

    >>> pairs(["a", "b", "c"], ["c", "a", "d"])
    [(2, 0), (0, 1), (None, 2), (1, None)]
    """
    left = list(range(len(old)))
    found: dict[int, int] = {}
    for j, name in enumerate(new):
        same = next((i for i in left if old[i] == name), None)
        if same is not None:
            found[j] = same
            left.remove(same)
    if reworded:
        for j, name in enumerate(new):
            close = (
                [(SequenceMatcher(None, old[i], name).ratio(), -i) for i in left] if j not in found else []
            )
            best, minus_i = max(close, default=(0.0, 0))
            if best >= _ALIKE:
                found[j] = -minus_i
                left.remove(-minus_i)
    return [*((found.get(j), j) for j in range(len(new))), *((i, None) for i in left)]


def moved(matched: Sequence[Pair]) -> list[Pair]:
    """The fewest parts whose moving explains the new order, for pairs in the new order.

    >>> moved([(0, 0), (2, 1), (3, 2), (1, 3)])
    [(1, 3)]
    """
    kept = [(i, j) for i, j in matched if i is not None and j is not None]
    ends: list[int] = []
    lengths: list[int] = []
    for i, _ in kept:
        at = bisect_left(ends, i)
        ends[at : at + 1] = [i]
        lengths.append(at + 1)
    wanted, stayed = len(ends), set()
    for (i, _), length in zip(reversed(kept), reversed(lengths), strict=True):
        if length == wanted:
            stayed.add(i)
            wanted -= 1
    return [pair for pair in kept if pair[0] not in stayed]
