"""A source is signed out of the register before it leaves its box.

Why: accounting begins when the lid opens. If a source is dropped or forgotten in the first minute, the
register must already say who has it.

Wrong:
    source bench:
      run:
        2: {signs_out: (left out)}
        4: {signs_out: source}

Right:
    source bench:
      run:
        2: {signs_out: (left out)}
        3: {signs_out: source}

Whose: the department's own rule; the duty to account for sources is law in many places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "source-signed-out-first"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a source is signed out before its box is opened")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that takes a source out."""
    for moment in lesson.moments:
        for slot in moment.step.takes_out:
            if slot not in moment.during.signed_out:
                later = [m.ref for m in lesson.moments if slot in m.step.signs_out]
                when = f"signed out in {later[0]}" if later else "never signed out"
                yield Problem(
                    lesson.spot(moment.ref, "takes_out"),
                    f"{moment.ref} takes {slot} out of its box before it is signed out",
                    found=when,
                    needed=f"signed out by {moment.ref}",
                    mend=f"sign {slot} out in a step before {moment.ref}",
                    whose=RULE,
                    related=tuple((lesson.spot(ref, "signs_out"), "signed out here") for ref in later[:1]),
                )
