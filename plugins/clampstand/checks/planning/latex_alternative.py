"""Where latex goes out, something else goes out with it.

Why: an allergy to latex is not rare and a reaction is not slow. Whoever has it is seldom asked in time, and
then there must be something else in the box.

Wrong:
    cold bench:
      kit:
        10: {item: rubber-ball, per: group, spare: 1, note: as an example}

Right:
    cold bench:
      kit:
        10: {item: rubber-ball, per: group, spare: 1, note: as an example}
        11: {item: plastic-ball, per: class, spare: 1, note: as an example}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "latex-alternative"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.LOCAL, "nobody is asked to touch latex")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every line of the kit with latex, against the item that may be used instead."""
    kit = lesson.book.kit
    for index, line in enumerate(lesson.practical.kit):
        item = kit.get(line.item)
        if item is None or not item.latex:
            continue
        instead = kit.get(item.instead or "")
        if instead is None or instead.latex or instead.id not in lesson.practical.items:
            known = instead.name if instead and not instead.latex else "an item without latex"
            yield Problem(
                lesson.practical.at("kit", index, "item"),
                f"{item.name} holds latex and nothing else is in the kit for whoever is allergic",
                found=f"instead: {item.instead or 'nothing'}",
                needed=f"{known} in the kit",
                mend="add it to the kit list, and write in the kit which item it is",
                whose=RULE,
                related=((item.spot, "the item is described here"),),
            )
