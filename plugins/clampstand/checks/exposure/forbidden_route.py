"""Nothing that is left over goes a way it must never go.

Why: dry ice in a sink cracks the trap and fills it with gas, solvent in a drain burns in the next building.
The kit says once where a thing may never go, and every practical keeps to it.

Wrong:
    cold bench:
      waste:
        1: {route: sink}

Right:
    cold bench:
      waste:
        1: {route: supplier}

Whose: the department's own rule; what may go into drains and bins is law in most places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "forbidden-route"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "waste goes only the ways its kit entry allows")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every line of waste, against what the item must never go into."""
    for number, waste in enumerate(lesson.practical.waste):
        item = lesson.book.kit.get(waste.what)
        if item is not None and waste.route in item.never_into:
            never = ", ".join(item.never_into)
            yield Problem(
                lesson.practical.at("waste", number, "route"),
                f"what is left of {item.name} goes into the {waste.route}",
                found=waste.route,
                needed=f"another way; never {never}",
                mend="choose a way that the item allows, or ask whoever wrote its entry in the kit",
                whose=RULE,
                related=((item.at("never_into"), "where it may never go"),),
            )
