"""Runs every edit over the demo content, in as many processes as there are processors."""

import os
import zlib
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from itertools import chain

from mutation.edits import Edit, all_edits
from mutation.judge import Judged, content, judged, plain
from mutation.shared import shared_edits

SHARED = ("sources", "supplies", "rooms", "kit", "packs")


def subjects() -> list[str]:
    """What is edited: every practical, every shared entry that some practical uses, and the department."""
    book = content()
    used = {item for practical in book.practicals.values() for item in practical.items}
    shared = [
        f"{shelf}/{its_id}"
        for shelf in SHARED
        for its_id in book.shelf(shelf)
        if (shelf != "kit" or its_id in used) and (shelf != "packs" or its_id in book.department.packs)
    ]
    return [f"practicals/{its_id}" for its_id in book.practicals] + shared + ["department/"]


def edits_of(subject: str) -> Iterator[Edit]:
    """Every edit of one subject."""
    book = content()
    shelf, _, its_id = subject.partition("/")
    if shelf == "practicals":
        practical = book.practicals[its_id]
        return all_edits(plain(practical), practical, book)
    entry = book.department if shelf == "department" else book.shelf(shelf)[its_id]
    return shared_edits(plain(entry), entry, book)


def _of_one(subject: str, one_in: int) -> list[Judged]:
    kept = (edit for edit in edits_of(subject) if _is_kept(f"{subject} {edit}", one_in))
    return list(judged(subject, kept))


def _is_kept(name: str, one_in: int) -> bool:
    """Whether an edit is in the sample: always the same ones, whatever the order."""
    return zlib.crc32(name.encode()) % one_in == 0


def run(one_in: int = 1) -> list[Judged]:
    """Every edit, or one in so many, judged. The order is always the same."""
    names = subjects()
    with ProcessPoolExecutor(max_workers=os.cpu_count()) as pool:
        return list(chain.from_iterable(pool.map(_of_one, names, [one_in] * len(names))))
