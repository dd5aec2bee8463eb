"""No laser is of a higher class than the limit.

Why: up to class 2 the eye shuts in time. Above it a glance into the beam, or into a reflection from a watch,
can leave a blind spot.

Wrong:
    high tension bench:
      kit:
        4: {item: laser-three, per: class, note: as an example}

Right:
    high tension bench:
      kit:
        4: {item: laser-two, per: class, note: as an example}

Whose: the department's own rule, after the classes of the laser standard.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import whose

ID = "laser-class"
SEVERITY = Severity.STOP
LIMIT = "light.laser-class"
LABEL = Whose(Layer.HANDBOOK, "a laser has the class that is on its label")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every laser of the kit list. The letter after a number makes a class higher: 2M is above 2."""
    limit = lesson.limit(LIMIT)
    for number, line in enumerate(lesson.practical.kit):
        item = lesson.book.kit.get(line.item)
        if item is None or item.laser_class is None:
            continue
        spot = lesson.practical.at("kit", number, "item")
        its_class = re.fullmatch(r"(?:class )?([1-4])(M|R|C|B)?", item.laser_class)
        if its_class is None:
            message = f"{item.name}: {item.laser_class} is no class of a laser"
            yield Problem(spot, message, item.laser_class, "1 to 4", "write the class on its label", LABEL)
        elif limit is not None and isinstance(limit.value, int) and _above(its_class, limit.value):
            yield Problem(
                spot,
                f"{item.name} is a laser of class {item.laser_class}",
                found=f"class {item.laser_class}",
                needed=f"class {limit.value} or lower",
                mend="use a laser of a lower class",
                whose=whose(limit),
                related=((item.at("laser_class"), "its class in the kit"),),
            )


def _above(its_class: re.Match[str], highest: int) -> bool:
    return (int(its_class[1]), its_class[2] or "") > (highest, "")
