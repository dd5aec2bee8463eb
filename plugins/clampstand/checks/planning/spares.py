"""What breaks easily has a spare, as far as the department owns one.

Why: a leaf tears, a balloon bursts, a fuse blows, with twenty minutes to go and nothing in the box.

Wrong:
    kit:
      taper: {fragile: yes}
    cold bench:
      kit:
        9: {spare: (left out)}

Right:
    kit:
      taper: {fragile: yes}
    cold bench:
      kit:
        9: {spare: 2}

Whose: common practice of technicians.
"""

from collections.abc import Iterator

from clampstand.calculators.kit_totals import total_of
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "spares"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.LOCAL, "what breaks easily goes out with a spare")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every counted line of what breaks; what is only used up, as paper is, comes from a full box anyway."""
    for index, line in enumerate(lesson.practical.kit):
        item = lesson.book.kit.get(line.item)
        if item is None or line.spare or line.amount is not None or line.made_here:
            continue
        wanted = total_of(line, lesson.practical, lesson.book).count
        if item.fragile and (item.owned is None or item.owned > wanted):
            yield Problem(
                lesson.practical.at("kit", index),
                f"{item.name} breaks easily and there is no spare",
                found=f"{wanted} for the class, 0 spare",
                needed="at least one spare",
                mend="write spare: 1 or more",
                whose=RULE,
                related=((item.spot, "the item is described here"),),
            )
