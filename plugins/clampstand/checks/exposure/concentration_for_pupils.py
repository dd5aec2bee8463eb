"""Pupils handle no solution that is stronger than the limit.

Why: an acid that stings at two moles a litre burns at twelve, and needs other gloves, goggles and
supervision. A slip of one digit is enough.

Wrong:
    cold bench:
      kit:
        10: {item: weak-acid, per: group, amount: 5 mL, note: as an example}
    kit:
      weak-acid: {concentration: 12 mol/dm³}

Right:
    cold bench:
      kit:
        10: {item: weak-acid, per: group, amount: 5 mL, note: as an example}
    kit:
      weak-acid: {concentration: 2 mol/L}

Whose: the department's own rule, after the classification of the substance.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity, Spot
from clampstand.limits import keeps, whose

ID = "concentration-for-pupils"
SEVERITY = Severity.STOP
LIMIT = "chemical.pupil-concentration"
MEETING = ("handles", "opens", "touches", "brings_in", "takes_away")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every solution given out to pupils, or met by them in a step."""
    for item_id, (spot, how) in _met_by_pupils(lesson).items():
        item = lesson.book.kit.get(item_id)
        if item is None or item.concentration is None:
            continue
        limit = lesson.limit(f"{LIMIT}.{item.substance}") or lesson.limit(LIMIT)
        if limit is not None and not keeps(item.concentration.high, limit):
            yield Problem(
                spot,
                f"{item.name}: {item.concentration} is {how}",
                found=str(item.concentration),
                needed=limit.in_words,
                mend="use a weaker solution, or let an adult do it",
                whose=whose(limit),
                related=((item.at("concentration"), "its concentration in the kit"),),
            )


def _met_by_pupils(lesson: Lesson) -> dict[str, tuple[Spot, str]]:
    """Items that pupils get or meet, with the first place that says so."""
    practical = lesson.practical
    met: dict[str, tuple[Spot, str]] = {}
    for moment in lesson.moments:
        if moment.step.doers & {"pupils", "volunteer"}:
            for how in MEETING:
                for item_id in getattr(moment.step, how):
                    met.setdefault(item_id, (lesson.spot(moment.ref, how), f"met by pupils in {moment.ref}"))
    if practical.pupils == "take part":
        for number, line in enumerate(practical.kit):
            if line.per in ("group", "pair", "pupil"):
                met.setdefault(line.item, (practical.at("kit", number), f"given to each {line.per}"))
    return met
