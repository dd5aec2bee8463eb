"""A barrier that a hazard asks for stands before the hazard is met, and as long as it lasts.

Why: fragments and splashes fly in the first second, and a beam is everywhere at once. A screen that is put up
afterwards has protected nobody, and one that is taken down while something still reacts or shines protects
nobody from then on. What is harmless until it is on, as a laser, may be handled before.

Wrong:
    cold bench:
      kit:
        10: {item: lively-metal, per: class, amount: 0.1 g}
        11: {item: clear-screen, per: class}
      run:
        7: {handles: lively-metal}
        9: {puts_up: clear-screen, takes_down: clear-screen}

Right:
    cold bench:
      kit:
        10: {item: lively-metal, per: class, amount: 0.1 g}
        11: {item: clear-screen, per: class}
      run:
        7: {puts_up: clear-screen}
        9: {handles: lively-metal}
        10: {takes_down: clear-screen}

Whose: the department's own rule, after what the hazard asks for.
"""

from collections.abc import Iterator

from clampstand.checks.meeting import Met, around, met_in, with_what_goes_on
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "barrier-up-first"
SEVERITY = Severity.STOP


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that meets a hazard or has it around, against the barriers that stand; each lack once."""
    said: set[tuple[str, str]] = set()
    for moment, going_on in with_what_goes_on(lesson):
        met_before = (met for met in met_in(lesson, moment) if met.hazard.in_place_while == "met")
        for met in (*met_before, *around(lesson, going_on)):
            for asked in met.hazard.in_place:
                if asked not in _stopped(lesson, moment) and (met.what, asked) not in said:
                    said.add((met.what, asked))
                    yield _problem(lesson, moment, met, asked)


def _stopped(lesson: Lesson, moment: Moment) -> frozenset[str]:
    """What the barriers that stand stop; one taken down in the step no longer counts."""
    standing = set(moment.during.barriers) - set(moment.step.takes_down)
    kit = lesson.book.kit
    return frozenset(what for item_id in standing if item_id in kit for what in kit[item_id].stops)


def _problem(lesson: Lesson, moment: Moment, met: Met, asked: str) -> Problem:
    fit = [item_id for item_id, item in lesson.book.kit.items() if asked in item.stops]
    standing = ", ".join(moment.during.barriers) or "nothing"
    later = next(
        (m.ref for m in lesson.moments[lesson.moments.index(moment) + 1 :] if set(m.step.puts_up) & set(fit)),
        None,
    )
    return Problem(
        met.spot(lesson, moment),
        f"{moment.ref} {met.how} {met.what} while no barrier stands against {asked}",
        found=f"standing in {moment.ref}: {standing}",
        needed=f"something that stops {asked}",
        mend=f"move {later}, where it goes up, before {moment.ref}"
        if later
        else f"put up {' or '.join(fit) or 'a suitable barrier'} before {moment.ref} and leave it",
        whose=Whose(Layer.LOCAL, f"{met.hazard.name}: {met.hazard.harm}", spot=met.hazard.spot),
    )
