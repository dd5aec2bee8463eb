"""Every source is back in its box and counted back before the class leaves.

Why: if a source is missing, the only people who can help to find it are still in the room.

Wrong:
    source bench:
      run:
        6: {counts_back: (left out)}
        7: {counts_back: source}

Right:
    source bench:
      run:
        6: {counts_back: source}

Whose: the department's own rule; the duty to account for sources is law in many places.
"""

from collections.abc import Iterator

from clampstand.checks.endings import Ending, endings
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "source-returned"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "sources are counted back before anybody leaves")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Looks at each moment the class leaves and at the end of the last step, and names a source once."""
    met: set[str] = set()
    for ending in endings(lesson):
        for problem, slot in _not_returned(lesson, ending):
            if slot not in met:
                met.add(slot)
                yield problem


def _not_returned(lesson: Lesson, ending: Ending) -> Iterator[tuple[Problem, str]]:
    # A source counted back in the very step in which the class leaves is counted too late.
    moment = ending.moment
    world = moment.during if moment.step.class_ == "leaves" else moment.after
    since = {**{slot: out.since for slot, out in world.out.items()}, **world.signed_out}
    for slot, ref in since.items():
        fault = "is out of its box" if slot in world.out else "has not been counted back"
        yield (
            Problem(
                lesson.spot(moment.ref),
                f"{ending.words} while {slot} {fault}",
                found=f"{slot} out since {ref}",
                needed="put back and counted back first",
                mend=f"put {slot} back and count it back in a step before the end",
                whose=RULE,
                related=((lesson.spot(ref), "out since this step"),),
            ),
            slot,
        )
