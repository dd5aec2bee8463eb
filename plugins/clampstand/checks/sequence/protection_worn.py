"""Protection is worn before the hazard it answers is met, and until it is done with.

Why: Dry ice at −78.5 °C freezes skin in seconds, and clearing up is handling too. What counts is what an item
protects from, not what it is called: thin gloves are no help against cold. What streams out or burns reaches
everybody until it is shut or put out.

Wrong:
    cold bench:
      run:
        2: {do: Listen., puts_on: (left out)}
        4: {do: Put them on., puts_on: {teacher: [padded-gloves, goggles], pupils: goggles}}

Right:
    cold bench:
      run:
        2: {do: Put them on., puts_on: {teacher: [goggles, padded-gloves], pupils: goggles}}

Whose: the department's own rule; suitable protective equipment is a duty of law in most places.
"""

from collections.abc import Iterator

from clampstand.checks.meeting import Met, around, met_in, with_what_goes_on
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.hazard import WornAgainst
from clampstand.model.step import ACTORS
from clampstand.timeline import Moment

ID = "protection-worn"
SEVERITY = Severity.STOP


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that meets a hazard or has it around, against what the hazard asks to be worn.

    What one and the same people lack is told once, with every other thing that they meet without it.
    """
    lacks: dict[tuple[WornAgainst, tuple[str, ...]], dict[str, tuple[Moment, Met]]] = {}
    for moment, going_on in with_what_goes_on(lesson):
        for met in (*met_in(lesson, moment), *around(lesson, going_on)):
            for asked in met.hazard.worn:
                bare = _bare(lesson, moment, met, asked)
                if bare:
                    lacks.setdefault((asked, bare), {}).setdefault(met.what, (moment, met))
    for (asked, bare), things in lacks.items():
        (moment, met), *others = things.values()
        yield _problem(lesson, moment, met, asked, bare, others)


def _bare(lesson: Lesson, moment: Moment, met: Met, asked: WornAgainst) -> tuple[str, ...]:
    """Who must wear it and does not: whoever does the step, or everyone who is there."""
    people = set(moment.step.doers)
    if asked.who == "everyone":
        people |= {"pupils"} if moment.during.class_here else set()
        people |= set(ACTORS[lesson.practical.led_by]) if moment.ref.phase == "run" else set()
    elif not met.near:
        return ()
    return tuple(sorted(person for person in people if not _covered(lesson, moment, person, asked)))


def _covered(lesson: Lesson, moment: Moment, person: str, asked: WornAgainst) -> bool:
    worn = (lesson.book.kit[item].worn for item in moment.during.wears(person) if item in lesson.book.kit)
    return any(w is not None and w.on in asked.on and asked.against in w.against for w in worn)


def _problem(
    lesson: Lesson,
    moment: Moment,
    met: Met,
    asked: WornAgainst,
    bare: tuple[str, ...],
    others: list[tuple[Moment, Met]],
) -> Problem:
    part, who = " or ".join(asked.on), ", ".join(bare)
    worn = sorted({item for person in bare for item in moment.during.wears(person)})
    return Problem(
        met.spot(lesson, moment),
        f"{moment.ref} {met.how} {met.what} while the {part} of the {who} are not protected "
        f"against {asked.against}",
        found=f"worn in {moment.ref}: {', '.join(worn) or 'nothing'}",
        needed=f"something worn on the {part} that protects against {asked.against}",
        mend=_mend(lesson, moment, asked),
        whose=Whose(Layer.LOCAL, f"{met.hazard.name}: {met.hazard.harm}", spot=met.hazard.spot),
        related=tuple((also.spot(lesson, at), f"{at.ref} {also.how} {also.what}") for at, also in others),
    )


def _mend(lesson: Lesson, moment: Moment, asked: WornAgainst) -> str:
    """Where the protection comes too late, says which step to move; else what of the kit would do."""
    fit = {
        item_id
        for item_id, item in lesson.book.kit.items()
        if item.worn and item.worn.on in asked.on and asked.against in item.worn.against
    }
    later = lesson.moments[lesson.moments.index(moment) + 1 :]
    for each in later:
        put_on = {item for items in each.step.puts_on.values() for item in items} & fit
        if put_on:
            return f"move {each.ref}, where {', '.join(sorted(put_on))} go on, before {moment.ref}"
    return f"put on {' or '.join(sorted(fit)) or 'suitable protection'} before {moment.ref} and keep it on"
