"""Every hazard that kit and sources bring is on the page, and something brings every hazard on the page.

Why: a hazard that nobody listed has no control, no sign and no line on the card. One that nothing brings any
more teaches people to read past the list.

Wrong:
    kit: {small-lamp: {hazards: high-voltage}}
    cold bench:
      kit:
        10: {item: small-lamp, per: class, note: as an example}

Right:
    kit: {small-lamp: {hazards: high-voltage}}
    cold bench:
      kit:
        10: {item: small-lamp, per: class, note: as an example}
      hazards:
        6: {hazard: high-voltage, here: The lamp., controls: [Hands off.]}

Whose: the department's own rule; assessing each risk before the work is a duty of law in most places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import candidates
from clampstand.findings import Layer, Problem, Severity, Spot, Whose

ID = "hazards-listed"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "every hazard of a practical is on its page with its controls")


def check(lesson: Lesson) -> Iterator[Problem]:
    """What is brought against what is listed, both ways."""
    practical, hazards = lesson.practical, lesson.book.hazards
    listed = {entry.hazard for entry in practical.hazards}
    brought = _brought(lesson)
    for name, (by, spot) in brought.items():
        if name not in listed and name in hazards:
            yield Problem(
                spot,
                f"{by} brings {hazards[name].name}, which is not among the hazards here",
                found=f"{by}, and no {name}",
                needed=f"{name} among the hazards",
                mend=f"add {name} to the hazards, with the controls used here",
                whose=RULE,
                related=((hazards[name].spot, "the hazard"),),
            )
    for index, entry in enumerate(practical.hazards if lesson.is_whole else ()):
        hazard = hazards.get(entry.hazard)
        if hazard is not None and hazard.comes_from == "things" and entry.hazard not in brought:
            yield Problem(
                practical.at("hazards", index, "hazard"),
                f"nothing in the kit and no source here brings {hazard.name}",
                found=entry.hazard,
                needed="a hazard of something that is used",
                mend="take the entry out, or name it under hazards of the item that brings it",
                whose=RULE,
                severity=Severity.WARNING,
            )


def _brought(lesson: Lesson) -> dict[str, tuple[str, Spot]]:
    """Each hazard with the first thing that brings it, and where the practical names that."""
    practical, kit = lesson.practical, lesson.book.kit
    brought: dict[str, tuple[str, Spot]] = {}
    for number, line in enumerate(practical.kit):
        for name in kit[line.item].hazards if line.item in kit else ():
            brought.setdefault(name, (line.item, practical.at("kit", number, "item")))
    for candidate in candidates(lesson):
        for name in candidate.source.hazards:
            brought.setdefault(name, (candidate.source.id, candidate.spot))
    return brought
