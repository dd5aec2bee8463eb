"""Every emergency procedure of a practical is one that a hazard of it can call for.

Why: a card has room for a few. One that nothing here can call for takes the place of one that will be needed,
and is often there because the wrong name was written.

Wrong:
    hazards: {deep-cold: {answered_by: frostbite}}
    cold bench:
      emergency: [frostbite, dropped]

Right:
    hazards: {deep-cold: {answered_by: frostbite, leads_to: dropped}}
    cold bench:
      emergency: [frostbite, dropped]

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "emergency-belongs"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a card shows the procedures that its hazards can call for")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each emergency against the hazards listed, where any of them says what it calls for."""
    practical, hazards = lesson.practical, lesson.book.hazards
    here = [hazards[entry.hazard] for entry in practical.hazards if entry.hazard in hazards]
    called = {name for hazard in here for name in (*hazard.answered_by, *hazard.leads_to)}
    for index, name in enumerate(practical.emergency if called else ()):
        if name not in called:
            yield Problem(
                practical.at("emergency", index),
                f"no hazard of this practical calls for {name}",
                found=name,
                needed=f"one of {', '.join(sorted(called))}",
                mend="name the procedure that is meant, or say at the hazard that it leads to this one",
                whose=RULE,
            )
