"""A thing stands on the kit list once for each use.

Why: of two equal lines one is a slip. The technician puts out twice as much, or the line that should stand
there is missing.

Wrong:
    cold bench:
      kit:
        10: {item: long-scoop, per: class}

Right:
    cold bench:
      kit:
        10: {item: long-scoop, per: adult}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Spot, Whose

ID = "kit-listed-once"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a kit line says all there is to one use of a thing")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Lines for the same item, the same people and the same phase."""
    met: dict[tuple[str, str, str], Spot] = {}
    for number, line in enumerate(lesson.practical.kit):
        use = (line.item, line.per, line.phase or "")
        spot = lesson.practical.at("kit", number, "item")
        if use in met:
            yield Problem(
                spot,
                f"{line.item} is on the kit list already, for each {line.per} too",
                found=f"two lines of {line.item}",
                needed="one line",
                mend="put both into one line, or say in which phase each is used",
                whose=RULE,
                related=((met[use], "the first line"),),
            )
        met.setdefault(use, spot)
