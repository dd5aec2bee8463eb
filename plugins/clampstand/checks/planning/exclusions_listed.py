"""Whoever must keep away from a hazard is named on the page.

Why: a spark or a strong field can stop what keeps somebody alive, and nobody can see who wears such a thing.
The page is what the teacher reads out before anybody comes near.

Wrong:
    hazards:
      high-voltage: {excludes: [people with an implanted device]}

Right:
    hazards:
      high-voltage: {excludes: [people with an implanted device]}
    high tension bench:
      excludes: [People with an implanted device]

Whose: the department's own rule, after the makers of such devices.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "exclusions-listed"
SEVERITY = Severity.STOP


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every hazard the practical names, and every hazard of its kit, against the practical's own list."""
    practical, book = lesson.practical, lesson.book
    listed = {who.casefold() for who in practical.excludes}
    of_kit = (h for line in practical.kit if line.item in book.kit for h in book.kit[line.item].hazards)
    for hazard_id in dict.fromkeys((*(here.hazard for here in practical.hazards), *of_kit)):
        hazard = book.hazards.get(hazard_id)
        missing = [who for who in hazard.excludes if who.casefold() not in listed] if hazard else []
        if hazard is not None and missing:
            yield Problem(
                practical.at("excludes" if practical.excludes else "hazards"),
                f"{hazard.name} excludes {', '.join(missing)}, and the practical does not say so",
                found=f"excludes: {', '.join(practical.excludes) or 'nobody'}",
                needed=", ".join(hazard.excludes),
                mend="write them under excludes",
                whose=Whose(Layer.LOCAL, f"{hazard.name}: {hazard.harm}", spot=hazard.spot),
                related=((hazard.at("excludes"), "who must keep away"),),
            )
