"""What decays is measured while at least half of it is left.

Why: after two half-lives a quarter is left, after five a thirtieth. The lesson then fails with no visible
cause: the counter works, the steps were followed, and there is hardly anything there.

Wrong:
    source bench:
      numbers:
        half-life of the sample: {value: 6 min, because: known}
      run:
        4: {name: collected}
        7: {after: collected, measures: rest, fades_with: half-life of the sample}

Right:
    source bench:
      numbers:
        half-life of the sample: {value: 12 min, because: known}
      run:
        4: {name: collected}
        7: {after: collected, measures: rest, fades_with: half-life of the sample}

Whose: physics.
"""

from collections.abc import Iterator

from clampstand.checks.fading import HALF, in_per_cent, left_after
from clampstand.checks.rule import Lesson
from clampstand.checks.times import longest_between
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.units import Amount, Quantity, is_under, shown_best

ID = "measured-in-time"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.PHYSICS, "after one half-life half is left, after two a quarter")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every declared delay, and every step that measures something that fades, against the half-life."""
    practical = lesson.practical
    for name, number in practical.numbers.items():
        half_life = practical.numbers.get(number.fades_with or "")
        if half_life is not None and number.value.kind == half_life.value.kind == "time":
            spot = practical.at("numbers", name, "value")
            yield from _too_late(spot, f"{name} is {number.value}", number.value.high, half_life.value)
    named = {moment.step.name: place for place, moment in enumerate(lesson.moments) if moment.step.name}
    for place, moment in enumerate(lesson.moments):
        half_life = practical.numbers.get(moment.step.fades_with or "")
        before = [named[name] for name in moment.step.after if name in named and named[name] < place]
        if half_life is not None and half_life.value.kind == "time" and before:
            last = lesson.moments[max(before)].ref
            time = longest_between(lesson, last, moment.ref)
            says = f"{moment.ref} measures {shown_best(time, 'time', 3)} after {last}"
            yield from _too_late(lesson.spot(moment.ref), says, time, half_life.value)


def _too_late(spot: Spot, says: str, time: Quantity, half_life: Amount) -> Iterator[Problem]:
    left = left_after(time, half_life)
    if is_under(left, HALF):
        yield Problem(
            spot,
            f"{says}: about {in_per_cent(left)} is left by then",
            found=f"{in_per_cent(left)} left, with a half-life of {half_life}",
            needed="at least half",
            mend="measure sooner",
            whose=RULE,
        )
