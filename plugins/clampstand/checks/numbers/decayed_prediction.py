"""No prediction rests on what a source was once, when less than half of it is left.

Why: a number worked out from the certificate is right on the day of the certificate. Years later the lesson
falls short of it, and somebody brings the source closer to mend what is not broken.

Wrong:
    source bench:
      numbers:
        expected rate: {value: 900 counts/min, fades_with: source}
    sources:
      N-1: {reference_date: 1990-06-01, received: 1990-06-20, working_life: 50 years}

Right:
    source bench:
      numbers:
        expected rate: {value: 900 counts/min, fades_with: source, on: 2024-06-01}
    sources:
      N-1: {reference_date: 1990-06-01, received: 1990-06-20, working_life: 50 years}

Whose: physics.
"""

from collections.abc import Iterator

from clampstand.checks.fading import HALF, in_per_cent, left_today
from clampstand.checks.rule import Lesson
from clampstand.checks.sources import is_in_use
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.department import Source
from clampstand.model.step import Number
from clampstand.units import is_same, is_under

ID = "decayed-prediction"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.PHYSICS, "a source loses half of its activity in each half-life")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every number that fades with a source, or is an activity some source had once, against today."""
    for name, number in lesson.practical.numbers.items():
        for source in _rests_on(lesson, number):
            left = left_today(lesson, source, number.on)
            if left is not None and is_under(left, HALF):
                yield Problem(
                    lesson.practical.at("numbers", name, "value"),
                    f"{name} is of {source.id} on {number.on or source.reference_date}, "
                    f"and {in_per_cent(left)} of that is left",
                    found=f"{number.value}",
                    needed=f"what {source.id} does on {lesson.book.department.computed_for}",
                    mend="measure it again and write the day beside it, or use another source",
                    whose=RULE,
                    related=((source.at("reference_date"), "its reference date"),),
                )


def _rests_on(lesson: Lesson, number: Number) -> tuple[Source, ...]:
    """The source a number was found with: the first choice in use of a slot, or a source by its id."""
    if number.fades_with is not None:
        named = lesson.book.sources.get(number.fades_with)
        sources = (named,) if named else lesson.candidates(number.fades_with)
        return tuple(source for source in sources if is_in_use(source))[:1]
    if number.value.kind != "activity":
        return ()
    everything = [s for slot in lesson.practical.sources for s in lesson.candidates(slot.name)]
    return tuple(s for s in everything if is_same(s.activity.value, number.value.value))
