"""What is thrown away is something that is used up: apparatus comes back.

Why: the preparation sheet counts back everything that is not used up. A pump that is thrown into the bin
there, and counted back here, is a wrong name, and what should have gone into the bin has no way out.

Wrong:
    cold bench:
      waste:
        2: {what: long-scoop, route: bin, by: technician}

Right:
    cold bench:
      waste:
        2: {what: long-scoop, route: reuse, by: technician}

Whose: this handbook: one sheet does not say two things.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "comes-back-or-goes"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what is counted back is not thrown away")
GONE = frozenset({"open air", "fume cupboard", "bin", "special waste bottle", "autoclave", "food waste"})
"""The ways on which nothing comes back. A blade leaves its handle, and what is poured out its vessel."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every entry under waste that goes for good, against whether its item is used up."""
    practical, kit = lesson.practical, lesson.book.kit
    used_up = {line.item for line in practical.kit if line.amount is not None or line.made_here}
    for index, waste in enumerate(practical.waste):
        item = kit.get(waste.what)
        if item is None or item.consumable or waste.what in used_up or waste.route not in GONE:
            continue
        yield Problem(
            practical.at("waste", index, "what"),
            f"{waste.what} goes {waste.route}, and is counted back as apparatus",
            found=f"{waste.what}: {waste.route}",
            needed="something that is used up, or a way back",
            mend=f"name what is left over; if {waste.what} is used up, write consumable: yes in the kit",
            whose=RULE,
            related=((item.spot, "the item"),),
        )
