"""A count made with a source out builds on the background, itself or wherever it is used.

Why: every count holds the background of its time. Where neither the count nor what is worked out of it names
the background, the net rate is too high, and nothing tells when the background comes too late.

Wrong:
    source bench:
      run:
        5: {builds_on: (left out)}

Right:
    source bench:
      run:
        5: {builds_on: (left out)}
        7: {builds_on: [background, counts]}

Whose: common practice: the background is taken off.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "counted-above-background"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "counts are judged against the background of the same place and day")
BACKGROUND = "background"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every result measured with a source out, after a background, against what builds on it."""
    known: list[str] = []
    for moment in lesson.moments:
        step = moment.step
        if known and moment.during.out and not _on_background(moment):
            for name in step.measures:
                if not _taken_off_later(lesson, name):
                    yield Problem(
                        lesson.spot(moment.ref, "measures"),
                        f"{moment.ref} measures {name}, and nothing takes {known[0]} off it",
                        found=f"{name} without {known[0]}",
                        needed=f"builds_on: {known[0]} here, or in every step that builds on {name}",
                        mend=f"write builds_on: {known[0]}",
                        whose=RULE,
                    )
        known += [name for name in step.measures if name.startswith(BACKGROUND)]


def _on_background(moment: Moment) -> bool:
    return any(name.startswith(BACKGROUND) for name in (*moment.step.builds_on, *moment.step.measures))


def _taken_off_later(lesson: Lesson, name: str) -> bool:
    """Whether some step builds on a result, and every one that does builds on a background too."""
    users = [moment for moment in lesson.moments if name in moment.step.builds_on]
    return bool(users) and all(_on_background(moment) for moment in users)
