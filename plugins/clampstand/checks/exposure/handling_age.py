"""Whoever handles a source is old enough.

Why: handling is where the dose and the loss are. Who may do it is a matter of age, training and the law of
the place; younger pupils watch.

Wrong:
    source bench:
      pupils: take part
      ages: 11 to 12
      run:
        3: {by: volunteer}

Right:
    source bench:
      pupils: take part
      ages: 16 to 18
      run:
        3: {by: volunteer}

Whose: the department's own rule in most places; some have a legal age.
"""

from collections.abc import Iterator

from clampstand.checks.meeting import MOVES
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.model.step import Step

ID = "handling-age"
SEVERITY = Severity.STOP
LIMIT = "radiation.handling-age"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step in which pupils handle a source, against the youngest age the practical is for."""
    limit = lesson.limit(LIMIT)
    ages = lesson.practical.ages
    if limit is None or not isinstance(limit.value, int) or keeps(ages.youngest, limit):
        return
    for moment in lesson.moments:
        if handles_a_source(moment.step) and moment.step.doers & {"pupils", "volunteer"}:
            who = " and ".join(moment.step.by)
            yield Problem(
                lesson.spot(moment.ref, "by"),
                f"{moment.ref} has {who} handle a source, and the practical is for ages {ages}",
                found=f"youngest {ages.youngest} years",
                needed=limit.in_words,
                mend="let an adult do this step, or write the practical for older pupils",
                whose=whose(limit),
                related=((lesson.practical.at("ages"), "the ages are declared here"),),
            )


def handles_a_source(step: Step) -> bool:
    """Whether a source is moved in a step."""
    return any(getattr(step, how) for how in MOVES)
