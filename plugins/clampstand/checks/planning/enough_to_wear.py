"""There is enough of everything that is worn for all who wear it at the same time.

Why: goggles for the class and none for the teacher are shared, or somebody goes without. Two lines of one
item, for pupils and for adults, are easily taken for one line too many.

Wrong:
    cold bench:
      kit: {5: {per: adult, spare: 0}}

Right:
    cold bench:
      kit: {5: {per: pupil, spare: 1}}

Whose: the department's own rule.
"""

from collections import Counter
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "enough-to-wear"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "whoever wears something has one")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every item that is put on, against the kit list's total with its spares."""
    there: Counter[str] = Counter()
    for total in lesson.sheet.totals:
        there[total.line.item] += total.count
    for item, (needed, moment) in _most_worn(lesson).items():
        if 0 < there[item] < needed:
            yield Problem(
                lesson.spot(moment.ref),
                f"{needed} people wear {item} in {moment.ref}, and the kit list has {there[item]}",
                found=f"{there[item]} of {item}, spares included",
                needed=str(needed),
                mend=f"add a line of {item} for those who have none, pupils or adults",
                whose=RULE,
            )


def _most_worn(lesson: Lesson) -> dict[str, tuple[int, Moment]]:
    """Item → how many wear it at once where most do, and the step."""
    most: dict[str, tuple[int, Moment]] = {}
    for moment in lesson.moments:
        if not moment.step.puts_on:
            continue
        worn = {item for items in moment.during.worn.values() for item in items}
        for item in worn:
            count = _how_many(lesson, item, moment)
            if count > most.get(item, (0, moment))[0]:
                most[item] = count, moment
    return most


def _how_many(lesson: Lesson, item: str, moment: Moment) -> int:
    """How many people wear an item in a step: of adults no more than the practical has."""
    who = {person for person, items in moment.during.worn.items() if item in items}
    adults = min(len(who - {"pupils", "volunteer"}), max(lesson.practical.needs.adults, 1))
    if not moment.during.class_here:
        return adults
    of_class = lesson.book.department.class_size if "pupils" in who else int("volunteer" in who)
    return adults + of_class
