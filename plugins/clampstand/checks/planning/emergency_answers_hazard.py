"""For every hazard of a practical, one of its emergency procedures says what to do when it has hurt somebody.

Why: the card is pulled out when it has already gone wrong. A hazard without its procedure leaves people to
invent one.

Wrong:
    hazards: {deep-cold: {answered_by: frostbite, leads_to: shock}}
    cold bench:
      emergency: [shock]

Right:
    hazards: {deep-cold: {answered_by: frostbite, leads_to: shock}}
    cold bench:
      emergency: [shock, frostbite]

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "emergency-answers-hazard"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "every hazard has its emergency procedure")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each listed hazard that procedures answer; where nothing has to be done at once, none does."""
    practical = lesson.practical
    for index, entry in enumerate(practical.hazards):
        hazard = lesson.book.hazards.get(entry.hazard)
        if hazard is None or not hazard.answered_by or set(hazard.answered_by) & set(practical.emergency):
            continue
        yield Problem(
            practical.at("hazards", index, "hazard"),
            f"no emergency procedure of this practical answers {hazard.name}",
            found=f"emergency: {', '.join(practical.emergency) or 'none'}",
            needed=" or ".join(hazard.answered_by),
            mend=f"add {hazard.answered_by[0]} to the emergencies",
            whose=RULE,
            related=((hazard.at("answered_by"), "what answers it"),),
        )
