"""What rubs off is washed off: hands before their owners leave, surfaces before the end.

Why: what stays on a finger is eaten with the next sandwich, and what stays on a bench is on the fingers of
the next class. Gloves are no excuse, for they are taken off with the same fingers.

Wrong:
    cold bench:
      kit:
        10: {item: culture, per: group}
      run:
        7: {handles: culture}
        10: {washes: hands}

Right:
    cold bench:
      kit:
        10: {item: culture, per: group}
      run:
        7: {handles: culture}
        9: {washes: bench}
        10: {washes: hands}

Whose: the department's own rule; hygiene after such work is a duty of law in many places.
"""

from collections.abc import Iterator, Mapping

from clampstand.checks.endings import endings
from clampstand.checks.rule import Lesson
from clampstand.checks.washing import SURFACES, unwashed
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment, StepRef

ID = "washed-after"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "hands and surfaces are washed after whatever rubs off")
CLASS = ("pupils", "volunteer")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Hands of the class when it leaves, and everything else after the last step."""
    states = {state.moment.ref: state.after for state in unwashed(lesson)}
    for ending in endings(lesson):
        left = states[ending.moment.ref]
        if ending.class_leaves:
            yield from _problems(lesson, ending.moment, {who: left[who] for who in CLASS if who in left})
    if lesson.moments:
        last = lesson.moments[-1]
        yield from _problems(
            lesson, last, {w: what for w, what in states[last.ref].items() if w not in CLASS}
        )


def _problems(lesson: Lesson, end: Moment, left: Mapping[str, Mapping[str, StepRef]]) -> Iterator[Problem]:
    """One problem for each thing that is left, at the last step that met it."""
    things = dict.fromkeys(thing for what in left.values() for thing in what)
    for thing in things:
        where = [who for who, what in left.items() if thing in what]
        since = max((left[who][thing] for who in where), key=lambda ref: _order(lesson, ref))
        named = ", ".join(who if who in SURFACES else f"hands of the {who}" for who in where)
        yield Problem(
            lesson.spot(since),
            f"{thing} is met in {since} and the {named} are not washed before the end of {end.ref}",
            found=f"no step that washes the {named} from {since} to {end.ref}",
            needed=f"a step that washes them after {since}",
            mend=f"add a step after {since}: washes, by whoever met it",
            whose=RULE,
            related=((lesson.spot(end.ref), "the end"),),
        )


def _order(lesson: Lesson, ref: StepRef) -> int:
    return [moment.ref for moment in lesson.moments].index(ref)
