"""No flammable vapour is in a room with a flame, a spark or a hot surface.

Why: the vapour of a spoonful of solvent makes litres of air that burn at the first spark, and it stays after
the bottle is closed. The bottle has to leave the room.

Wrong:
    cold bench:
      run:
        5: {lights: taper, puts_out: taper}

Right:
    cold bench:
      run:
        9: {lights: taper, puts_out: taper}

Whose: physics; keeping flames from vapour is a duty of law wherever flammables are used.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.vapours import ignition, with_vapours
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment, StepRef

ID = "no-vapour-with-flame"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "vapour above its lower flammable limit burns at any spark")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The first moment at which each vapour meets each ignition source."""
    met: set[tuple[str, str]] = set()
    for moment, vapours in with_vapours(lesson):
        for vapour, opened in vapours.items():
            for source, lit in ignition(lesson, moment).items():
                if (vapour, source) not in met:
                    met.add((vapour, source))
                    yield _problem(lesson, moment, (vapour, opened), (source, lit))


def _problem(
    lesson: Lesson, moment: Moment, vapour: tuple[str, StepRef], source: tuple[str, StepRef]
) -> Problem:
    return Problem(
        lesson.spot(moment.ref),
        f"{vapour[0]} is open since {vapour[1]} while {source[0]} is lit or on since {source[1]}",
        found=f"{vapour[0]} and {source[0]} together in {moment.ref}",
        needed="the vapour gone before anything can light it",
        mend=f"take {vapour[0]} away before {source[1]}, or put {source[0]} out before {vapour[1]}",
        whose=RULE,
        related=(
            (lesson.spot(vapour[1]), "opened here"),
            (lesson.spot(source[1]), "lit or switched on here"),
        ),
    )
