"""Nobody eats or drinks between what rubs off and washing, nor while a source is out.

Why: a finger carries to the mouth what no glove box lets out. Swallowed, an alpha emitter does its harm at no
distance at all.

Wrong:
    cold bench:
      kit:
        10: {item: rubbing-lead, per: group}
      run:
        7: {handles: rubbing-lead}
        9: {eats: yes}
        10: {washes: hands}

Right:
    cold bench:
      kit:
        10: {item: rubbing-lead, per: group}
      run:
        7: {handles: rubbing-lead}
        8: {by: everyone, washes: hands}
        9: {eats: yes}

Whose: the department's own rule; it is law wherever the law speaks of such work.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.washing import unwashed
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "no-eating-between"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "no food or drink before hands are washed, nor beside a source")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step with eating or drinking, against what is on the hands of those who eat and what is out."""
    for state in unwashed(lesson):
        moment = state.moment
        if not moment.step.eats:
            continue
        left = state.after if moment.step.washes else state.during
        on_hands = {t: since for who in sorted(moment.step.doers) for t, since in left.get(who, {}).items()}
        out = {slot: out.since for slot, out in moment.during.out.items()}
        for thing, since in {**on_hands, **out}.items():
            fault = "is out of its box" if thing in out else "was met and hands are not washed"
            yield Problem(
                lesson.spot(moment.ref, "eats"),
                f"somebody eats or drinks in {moment.ref} while {thing} {fault} since {since}",
                found=f"eating in {moment.ref}",
                needed="hands washed, and every source back, before anybody eats",
                mend=f"wash hands between {since} and {moment.ref}, or eat before",
                whose=RULE,
                related=((lesson.spot(since), "since here"),),
            )
