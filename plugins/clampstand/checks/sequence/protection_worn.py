"""Protection is worn before the hazard it answers is met, and until it is done with.

Why: dry ice at −78.5 °C freezes skin in seconds, and clearing up is handling too. What counts is what an item
protects from, not what it is called: thin gloves are no help against cold.

Wrong:
    cold bench:
      run:
        2: {puts_on: (left out)}
        4: {puts_on: {everyone: [goggles], adults: [padded-gloves]}}

Right:
    cold bench:
      run:
        3: {puts_on: {teacher: [padded-gloves]}}

Whose: the department's own rule; suitable protective equipment is a duty of law in most places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.hazard import Hazard, WornAgainst
from clampstand.model.step import ACTORS
from clampstand.timeline import Moment

ID = "protection-worn"
SEVERITY = Severity.STOP
MEETS = ("handles", "opens", "closes")
"""What brings a person within reach of an item's hazards."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that meets an item, against what the item's hazards ask to be worn."""
    for moment in lesson.moments:
        for how in MEETS:
            for item_id in getattr(moment.step, how):
                item = lesson.book.kit.get(item_id)
                for hazard_id in item.hazards if item else ():
                    hazard = lesson.book.hazards.get(hazard_id)
                    if hazard is not None:
                        yield from _unprotected(lesson, moment, how, item_id, hazard)


def _unprotected(lesson: Lesson, moment: Moment, how: str, item_id: str, hazard: Hazard) -> Iterator[Problem]:
    for asked in hazard.worn:
        bare = [
            person for person in _who(asked, lesson, moment) if not _covered(lesson, moment, person, asked)
        ]
        if bare:
            part = " or ".join(asked.on)
            yield Problem(
                lesson.spot(moment.ref, how),
                f"{moment.ref} {how} {item_id} while the {part} of the {', '.join(bare)} "
                f"are not protected against {asked.against}",
                found=_worn_in_words(moment, bare),
                needed=f"something worn on the {part} that protects against {asked.against}",
                mend=_mend(lesson, moment, asked),
                whose=Whose(Layer.LOCAL, f"{hazard.name}: {hazard.harm}", spot=hazard.spot),
            )


def _who(asked: WornAgainst, lesson: Lesson, moment: Moment) -> list[str]:
    """Who must wear it: whoever does the step, or everyone who is there."""
    people = set(moment.step.doers)
    if asked.who == "everyone":
        people |= {"pupils"} if moment.during.class_here else set()
        people |= {lesson.practical.led_by} & set(ACTORS)
    return sorted(people)


def _covered(lesson: Lesson, moment: Moment, person: str, asked: WornAgainst) -> bool:
    worn = (lesson.book.kit[item].worn for item in moment.during.wears(person) if item in lesson.book.kit)
    return any(w is not None and w.on in asked.on and asked.against in w.against for w in worn)


def _worn_in_words(moment: Moment, people: list[str]) -> str:
    worn = sorted({item for person in people for item in moment.during.wears(person)})
    return f"worn in {moment.ref}: {', '.join(worn) or 'nothing'}"


def _mend(lesson: Lesson, moment: Moment, asked: WornAgainst) -> str:
    """Where the protection comes too late, says which step to move; else what of the kit would do."""
    fit = {
        item_id
        for item_id, item in lesson.book.kit.items()
        if item.worn and item.worn.on in asked.on and asked.against in item.worn.against
    }
    for later in lesson.moments:
        put_on = {item for items in later.step.puts_on.values() for item in items}
        if (later.ref.phase, later.ref.number) > (moment.ref.phase, moment.ref.number) and put_on & fit:
            return f"move {later.ref}, where {', '.join(sorted(put_on & fit))} go on, before {moment.ref}"
    return f"put on {' or '.join(sorted(fit)) or 'suitable protection'} before {moment.ref} and keep it on"
