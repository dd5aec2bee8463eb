"""What rubs off is washed off: hands before their owners leave, surfaces before the end.

Why: what stays on a finger is eaten with the next sandwich, and what stays on a bench is on the fingers of
the next class. Gloves are no excuse, for they are taken off with the same fingers: whoever takes off a glove
or a coat that has met it washes afterwards.

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

from collections.abc import Iterator

from clampstand.checks.endings import endings
from clampstand.checks.rule import Lesson
from clampstand.checks.washing import SURFACES, Left, unwashed
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment, StepRef

ID = "washed-after"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "hands and surfaces are washed after whatever rubs off")
CLASS = ("pupils", "volunteer")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Hands of the class when it leaves, of others after preparing, all that is left at the end."""
    states = {state.moment.ref: state.after for state in unwashed(lesson)}
    told: set[tuple[str, str]] = set()
    for ending in endings(lesson):
        left = states[ending.moment.ref]
        if ending.class_leaves:
            yield from _problems(lesson, ending.moment, {who: left[who] for who in CLASS if who in left})
        elif ending.moment.ref.phase == "prepare":
            hands = {who: what for who, what in left.items() if who not in (*CLASS, *SURFACES)}
            told |= {(who, thing) for who, what in hands.items() for thing in what}
            yield from _problems(lesson, ending.moment, hands)
    if lesson.moments:
        last = lesson.moments[-1]
        others = {who: what for who, what in states[last.ref].items() if who not in CLASS}
        yield from _problems(lesson, last, _without(others, told))


def _without(left: Left, told: set[tuple[str, str]]) -> Left:
    return {
        who: {thing: ref for thing, ref in what.items() if (who, thing) not in told}
        for who, what in left.items()
    }


def _problems(lesson: Lesson, end: Moment, left: Left) -> Iterator[Problem]:
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
