"""A step keeps no shorter distance than the one declared.

Why: the declared distance is on the card and on the floor tape; the step is what people hear last. If they
differ, nobody knows which was meant, and people stand where the last words put them.

Wrong:
    source bench:
      numbers:
        watchers' distance: {value: 3 m}
      run:
        5: {stand: {watchers: 2.5 m}}

Right:
    source bench:
      numbers:
        watchers' distance: {value: 3 m}
      run:
        5: {stand: {watchers: 300 cm}}

Whose: this handbook: a number that safety rests on is written once and quoted by name.
"""

from collections.abc import Iterator

from clampstand.checks.distances import LIMITED, a_source_is_out, a_supply_is_on, declared, said
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import keeps
from clampstand.units import is_under

ID = "one-distance"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a distance that safety rests on is written once and quoted by name")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each distance a step says, against the shortest declared one, where it keeps to the limit.

    One under the limit is the matter of the rule of that distance, which says all this as well.
    """
    if not lesson.knows_its_limits:
        return
    for ends, key in LIMITED.items():
        lengths = [kept for kept in declared(lesson, ends) if kept.amount.kind == "length"]
        limit = lesson.limit(key)
        if not lengths:
            continue
        shortest = min(lengths, key=lambda kept: kept.amount.low)
        for kept in said(lesson, ends, a_supply_is_on if ends == "people" else a_source_is_out):
            within = kept.amount.kind == "length" and (limit is None or keeps(kept.amount.low, limit))
            if within and is_under(kept.amount.low, shortest.amount.low):
                yield Problem(
                    kept.spot,
                    f"{kept.where} keeps {ends} at {kept.amount}, and {shortest.where} is {shortest.amount}",
                    found=f"{kept.amount} in {kept.where}, {shortest.amount} declared",
                    needed=f"one distance: {shortest.amount} or more",
                    mend=f"write {shortest.where} in the step instead of {kept.amount}",
                    whose=RULE,
                    related=((shortest.spot, "declared here"),),
                )
