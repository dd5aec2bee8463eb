"""No more sources are out of their boxes at once than the limit says.

Why: with two out, they are taken for one another, each spoils the other's readings, and the wrong one goes
into the wrong box.

Wrong:
    source bench:
      sources:
        1: {one_of: [N-1]}
        2: {name: other, one_of: [N-2]}
      run:
        2: {signs_out: [source, other]}
        4: {do: Take the other out too., takes_out: other, holds_with: long-forceps, sets_down: (left out)}
        6: {picks_up: (left out), puts_back: [source, other], counts_back: [source, other]}

Right:
    source bench:
      sources:
        1: {one_of: [N-1]}
        2: {name: other, one_of: [N-2]}
      run:
        2: {signs_out: [source, other]}
        4: {do: Put it back., sets_down: (left out), puts_back: source, counts_back: source}
        5: {takes_out: other, holds_with: long-forceps}
        6: {picks_up: (left out), puts_back: other, counts_back: other}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose

ID = "one-source-out"
SEVERITY = Severity.STOP
LIMIT = "radiation.sources-out"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that takes out one source too many."""
    limit = lesson.limit(LIMIT)
    if limit is None or not isinstance(limit.value, int):
        return
    for moment in lesson.moments:
        out = moment.during.out
        if len(out) <= len(moment.before.out) or keeps(len(out), limit):
            continue
        earlier = [(slot, moment.before.out[slot].since) for slot in out if slot in moment.before.out]
        since = ", ".join(f"{slot} since {ref}" for slot, ref in earlier) or "all in this step"
        yield Problem(
            lesson.spot(moment.ref, "takes_out"),
            f"{moment.ref} takes out {' and '.join(moment.step.takes_out)} while others are out: {since}",
            found=f"{len(out)} out at once: {', '.join(out)}",
            needed=limit.in_words,
            mend="put the one back, in a step of its own, before the next is taken out",
            whose=whose(limit),
            related=tuple((lesson.spot(ref, "takes_out"), f"{slot} taken out here") for slot, ref in earlier),
        )
