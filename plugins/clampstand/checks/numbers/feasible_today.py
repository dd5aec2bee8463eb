"""The counts that are wanted can be had today, in the time left.

Why: a source that has decayed, or stands too far off, gives its counts long after the bell. Half a curve is
then plotted, or somebody moves the source closer. Gas in the room and warm cylinders have rules of their own.

Wrong:
    source bench:
      sources: {1: {one_of: N-1}}
      numbers:
        window: {value: 4.5 mm, because: radius on its data sheet}
        efficiency: {value: 1 %, because: common for hard gamma rays}
        far end: {value: 400 mm, because: the end of the bench}
        wanted: {value: 400 counts, because: they are good to a twentieth}
        time left: {value: 5 min, because: the plan}
      expect:
        2:
          compute: counting-time
          given:
            {distance: far end, radius: window, efficiency: efficiency, counts: wanted, available: time left}
          within: a factor of two

Right:
    source bench:
      sources: {1: {one_of: N-1}}
      numbers:
        window: {value: 4.5 mm, because: radius on its data sheet}
        efficiency: {value: 1 %, because: common for hard gamma rays}
        far end: {value: 40 mm, because: near the tube}
        wanted: {value: 400 counts, because: they are good to a twentieth}
        time left: {value: 5 min, because: the plan}
      expect:
        2:
          compute: counting-time
          given:
            {distance: far end, radius: window, efficiency: efficiency, counts: wanted, available: time left}
          within: a factor of two

Whose: physics.
"""

from collections.abc import Iterator

from clampstand.calculators.feasible import too_slow
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "feasible-today"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.PHYSICS, "a count takes as long as the source needs to give it")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every counting time against the time left for it."""
    practical = lesson.practical
    for slow in too_slow(practical, lesson.book):
        yield Problem(
            practical.at("expect", slow.entry, "given"),
            f"the counts wanted from {slow.source.id} take {slow.time.shown} today, "
            f"and there is only {slow.available}",
            found=f"{slow.time.shown} ({'; '.join(f'{i.name} {i.value}' for i in slow.time.inputs)})",
            needed=f"at most {slow.available}",
            mend="go nearer as far as the rules allow, want fewer counts, take more time or another source",
            whose=RULE,
            related=((slow.source.at("reference_date"), "its activity was measured then"),),
        )
