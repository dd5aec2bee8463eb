"""All of a flammable liquid, as vapour in the smallest room it is opened in, stays far below what burns.

Why: a spoonful of spirit makes litres of vapour. Vapour never spreads evenly, so the average of the room has
to stay well under the flammable limit for any corner to be safe.

Wrong:
    kit: {thin-spirit: {substance: propan-2-ol}}
    limits: {fire.part-of-flammable-limit: {at_most: 25 %}}
    cold bench:
      kit:
        2: {amount: 700 mL}

Right:
    kit: {thin-spirit: {substance: propan-2-ol}}
    limits: {fire.part-of-flammable-limit: {at_most: 25 %}}
    cold bench:
      kit:
        2: {amount: 300 mL}

Whose: the department's own rule, after the custom of keeping below a quarter of the lower flammable limit.
"""

from collections.abc import Iterator

from clampstand.calculators.vapour import part_of_flammable_limit, volume_at_hand
from clampstand.calculators.worked import CannotWork
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose
from clampstand.model.department import Room
from clampstand.model.practical import PHASES

ID = "vapour-below-flammable"
SEVERITY = Severity.STOP
LIMIT = "fire.part-of-flammable-limit"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Each flammable liquid of the kit list, in the smallest room in which it is opened or handled."""
    practical, kit = lesson.practical, lesson.book.kit
    limit = lesson.limit(LIMIT)
    met: set[str] = set()
    for number, line in enumerate(practical.kit):
        item = kit.get(line.item)
        if limit is None or item is None or not item.flammable_vapour or line.item in met:
            continue
        met.add(line.item)
        volume, room = volume_at_hand(line.item, practical, lesson.book), _smallest_room(lesson, line.item)
        if volume is None or room is None:
            continue
        try:
            worked = part_of_flammable_limit(item, volume, room, lesson.book)
        except CannotWork:
            continue  # nothing is known of what it is made of
        if not keeps(worked.value, limit):
            inputs = ", ".join(f"{entry.name} {entry.value}" for entry in worked.inputs)
            yield Problem(
                practical.at("kit", number, "amount"),
                f"all of the {item.name} as vapour in {room.name} is {worked.shown} of what burns",
                found=f"{worked.shown} ({worked.formula}; {inputs})",
                needed=limit.in_words,
                mend="bring less of it, or open it in a larger room",
                whose=whose(limit),
            )


def _smallest_room(lesson: Lesson, item_id: str) -> Room | None:
    """The smallest closed room in which a step opens or handles it; None where none does."""
    found: list[Room] = []
    for moment in lesson.moments:
        if item_id in (*moment.step.opens, *moment.step.handles):
            phase = next(phase for phase in PHASES if phase == moment.ref.phase)
            names = (moment.step.room,) if moment.step.room else lesson.practical.where.get(phase, ())
            found += [lesson.book.rooms[name] for name in names if name in lesson.book.rooms]
    closed = [(room.volume.low, room) for room in found if room.volume is not None and not room.is_open_air]
    return min(closed, key=lambda pair: float(pair[0].m_as("m**3")))[1] if closed else None
