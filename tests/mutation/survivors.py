"""Why each edit that no rule catches is let through: the patterns of ``survivors.yml``."""

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Literal

import yaml

from mutation.judge import Judged

PATH = Path(__file__).with_name("survivors.yml")


@dataclass(frozen=True)
class Pattern:
    """A class of survivors: what matches, why it is let through, and whether that does harm.

    Args:
        sort: the sorts of edit, one or more with commas between, or ``.*`` for all.
        where: a regular expression that the whole address matches.
        of: one that the whole subject matches, as ``kit/.*``.
        was: one that what stood there before matches.
        now: one that what stands there now matches.
        proven: what ``same.py`` has shown of it: ``said twice`` or ``independent``; empty for what it has not
            been asked or could not show.
        why: why no rule catches it.
        verdict: ``harmless`` where nothing wrong comes of it, ``gap`` where something can.
    """

    why: str
    verdict: Literal["harmless", "gap"]
    sort: str
    where: str = ".*"
    of: str = ".*"
    was: str = ".*"
    now: str = ".*"
    proven: str = ""

    def explains(self, edit: Judged) -> bool:
        """Whether it is about an edit."""
        return (
            (not self.proven or self.proven == edit.proven)
            and (self.sort == ".*" or edit.sort in self.sort.split(", "))
            and all(
                re.fullmatch(pattern, text, re.DOTALL)
                for pattern, text in (
                    (self.where, edit.address),
                    (self.of, edit.subject),
                    (self.was, edit.was),
                    (self.now, edit.now),
                )
            )
        )


@cache
def patterns() -> tuple[Pattern, ...]:
    """Every pattern, in the order they stand."""
    return tuple(Pattern(**entry) for entry in yaml.safe_load(PATH.read_text(encoding="utf-8")))


def explained(edit: Judged) -> Pattern | None:
    """The first pattern that is about an edit; None where none is."""
    return next((pattern for pattern in patterns() if pattern.explains(edit)), None)
