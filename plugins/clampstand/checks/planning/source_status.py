"""A practical asks only for sources that are in use.

Why: a source in quarantine is there for a reason, and one that has been disposed of is a dead entry or an
unregistered source in its place.

Wrong:
    source bench:
      sources:
        1: {one_of: [N-1, N-4]}

Right:
    source bench:
      sources:
        1: {one_of: [N-2, N-1]}

Whose: the department's own rule; records of sources are law in most places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import candidates, is_in_use
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "source-status"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "only sources in use leave the store")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every source a slot may be filled with, by its status in the register."""
    for candidate in candidates(lesson):
        source = candidate.source
        if not is_in_use(source):
            gone = f" on {source.disposal.on}" if source.disposal else ""
            yield Problem(
                candidate.spot,
                f"{source.id} cannot be used: it is {source.status}{gone}",
                found=f"{source.status}{gone}",
                needed="in use",
                mend=f"take {source.id} off the list of sources, or name another",
                whose=RULE,
                related=((source.at("status"), "its status in the register"),),
            )
