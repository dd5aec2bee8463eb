"""A step that takes a source out, or switches on what can hurt, says how far everybody keeps.

Why: a distance holds until another is said. Where a danger begins anew and nothing is said, the distance is
one that was meant for something else, or nobody remembers it. So it is where a source is in hand again, after
steps in which the hands kept farther away.

Wrong:
    source bench:
      run:
        3: {stand: {watchers: (left out)}}

Right:
    source bench:
      run:
        3: {stand: {watchers: 200 cm}}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.distances import LIMITED, Kept, amount_named, declared
from clampstand.checks.rule import Lesson
from clampstand.checks.sources import needs_tool
from clampstand.checks.supplies import is_dangerous
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import DistanceEnds
from clampstand.timeline import Moment
from clampstand.units import is_over

ID = "distance-said-again"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "where a danger begins, the distance from it is said")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step in which a danger begins, against what it and the steps before it in its phase say."""
    phase, said, held = "", dict[DistanceEnds, str](), dict[str, str]()
    for moment in lesson.moments:
        step = moment.step
        if moment.ref.phase != phase:
            phase, said, held = moment.ref.phase, {}, {}
        said |= step.stand
        for ends in _matters(lesson, moment):
            kept = _meant(lesson, moment, ends) if ends not in said else None
            if kept is not None:
                yield _problem(lesson, moment, ends, kept)
        yield from _left_behind(lesson, moment, said.get("hands", ""), held)
        held |= dict.fromkeys((*step.takes_out, *step.picks_up), said.get("hands", ""))


def _matters(lesson: Lesson, moment: Moment) -> Iterator[DistanceEnds]:
    step, watched = moment.step, moment.during.class_here
    if any(needs_tool(lesson, slot) for slot in step.takes_out):
        yield "hands"
    if step.takes_out and watched:
        yield "watchers"
    for supply in step.switches_on if watched else ():
        if is_dangerous(lesson, supply) or _kept_with(lesson, "people", supply):
            yield "people"
        if _kept_with(lesson, "electronics", supply):
            yield "electronics"


def _kept_with(lesson: Lesson, ends: DistanceEnds, supply: str) -> Kept | None:
    """What a step keeps that switches a supply on before the class; None where none does."""
    for moment in lesson.moments:
        says = moment.during.class_here and supply in moment.step.switches_on
        text = moment.step.stand.get(ends, "") if says else ""
        amount = amount_named(lesson, text)
        if amount is not None:
            return Kept(amount, lesson.spot(moment.ref, "stand", ends), text)
    return None


def _meant(lesson: Lesson, moment: Moment, ends: DistanceEnds) -> Kept | None:
    """The distance that was meant: the one declared for it, or the one another step keeps."""
    ours = declared(lesson, ends) if ends in LIMITED else ()
    others = (_kept_with(lesson, ends, supply) for supply in moment.step.switches_on)
    return ours[0] if ours else next((kept for kept in others if kept), None)


def _left_behind(lesson: Lesson, moment: Moment, now: str, held: dict[str, str]) -> Iterator[Problem]:
    """A source in hand again, while the distance in force is a greater one, said for what came between."""
    step = moment.step
    for slot in (*step.takes_out, *step.picks_up):
        before, after = (amount_named(lesson, text) for text in (held.get(slot, ""), now))
        if "hands" in step.stand or before is None or after is None or before.kind != after.kind:
            continue
        if is_over(after.low, before.low):
            yield Problem(
                lesson.spot(moment.ref),
                f"{moment.ref} moves {slot} and does not say how far hands keep",
                found=f"{now}, said for a step between",
                needed=f"stand: {{hands: {held[slot]}}}, as where it was moved before",
                mend=f"name {held[slot]} under stand",
                whose=RULE,
            )


def _problem(lesson: Lesson, moment: Moment, ends: DistanceEnds, kept: Kept) -> Problem:
    return Problem(
        lesson.spot(moment.ref),
        f"{moment.ref} {_begins(moment)} and does not say how far {ends} keep",
        found=f"no {ends} under stand",
        needed=f"stand: {{{ends}: {kept.where}}}",
        mend=f"name {kept.where} under stand",
        whose=RULE,
        related=((kept.spot, "kept here"),),
    )


def _begins(moment: Moment) -> str:
    things = moment.step.takes_out or tuple(moment.step.switches_on)
    return f"{'takes out' if moment.step.takes_out else 'switches on'} {', '.join(things)}"
