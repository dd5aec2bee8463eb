"""Counts have a background: counted without a source, in the same lesson.

Why: a counter counts the room as well. Without that number a weak source and no source look alike, and the
net count that everything rests on cannot be worked out.

Wrong:
    source bench:
      run:
        1: {measures: (left out)}
        5: {builds_on: (left out)}

Right:
    source bench:
      run:
        1: {measures: (left out)}
        5: {builds_on: (left out)}
        7: {measures: background}

Whose: common practice wherever radiation is counted.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "background-measured"
SEVERITY = Severity.STOP
RULE = Whose(Layer.GUIDANCE, "counts are judged against the background of the same place and day")
BACKGROUND = "background"


def check(lesson: Lesson) -> Iterator[Problem]:
    """A practical that counts in its run: a background somewhere in it, and no source out meanwhile."""
    measuring = [m for m in lesson.moments if m.step.measures and m.ref.phase in ("set_up", "run")]
    if not _counts(lesson) or not any(m.ref.phase == "run" for m in measuring):
        return
    backgrounds = [m for m in measuring if any(r.startswith(BACKGROUND) for r in m.step.measures)]
    if not backgrounds:
        yield _missing(lesson, measuring[-1])
    for moment in backgrounds:
        for slot, out in moment.during.out.items():
            yield Problem(
                lesson.spot(moment.ref, "measures"),
                f"{moment.ref} measures the background while {slot} is out since {out.since}",
                found=f"{slot} out of its box in {moment.ref}",
                needed="no source out while the background is counted",
                mend=f"move {moment.ref} before {out.since}, or after {slot} is back",
                whose=RULE,
                related=((lesson.spot(out.since), "taken out here"),),
            )


def _counts(lesson: Lesson) -> bool:
    """Whether a counter is in the kit for the lesson itself."""
    kit = lesson.book.kit
    lines = [line for line in lesson.practical.kit if line.phase in (None, "set_up", "run")]
    return any(line.item in kit and kit[line.item].counts_radiation for line in lines)


def _missing(lesson: Lesson, moment: Moment) -> Problem:
    results = ", ".join(dict.fromkeys(r for m in lesson.moments for r in m.step.measures))
    return Problem(
        lesson.spot(moment.ref, "measures"),
        f"{moment.ref} measures {', '.join(moment.step.measures)} and no step measures a background",
        found=f"measured: {results}",
        needed="a step, before or after, with no source out: measures background",
        mend="add a step that counts the background for as long as the source is counted",
        whose=RULE,
    )
