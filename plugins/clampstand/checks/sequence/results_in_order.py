"""A step comes after the steps it needs, and no two steps wait for each other.

Why: a step that needs a result nobody has yet can't be done. Either the lesson stops there, or somebody makes
the missing number up.

Wrong:
    source bench:
      run:
        5: {builds_on: [background, drift]}
        7: {measures: drift}

Right:
    source bench:
      run:
        5: {builds_on: [background, drift]}
        2: {measures: drift}

Whose: this handbook: steps are read from the first to the last.
"""

from collections.abc import Iterator, Mapping

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "results-in-order"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "steps are done in the order they stand in")

Needs = Mapping[int, Mapping[tuple[str, str], int]]
"""Step → by which word and name it needs another → that step; both as places in the order."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Everything a step builds on or comes after, against where that stands."""
    needs = _needs(lesson)
    refs = [moment.ref for moment in lesson.moments]
    for place, needed in needs.items():
        for (word, name), other in needed.items():
            if other < place:
                continue
            circle = place in _reached(needs, other)
            each_other = f"{refs[place]} and {refs[other]} depend on each other: "
            what = f"builds on {name}" if word == "builds_on" else f"comes after {name}"
            when = "itself" if other == place else f"only {refs[other]}"
            yield Problem(
                lesson.spot(refs[place], word),
                f"{each_other if circle and other != place else ''}{refs[place]} {what}, which is {when}",
                found=f"{name} in {refs[other]}",
                needed=f"{name} before {refs[place]}",
                mend=f"take one of the two {word} out, so that the circle is broken"
                if circle
                else f"move {refs[other]} before {refs[place]}",
                whose=RULE,
                related=((lesson.spot(refs[other]), f"{name} is here"),),
            )


def _needs(lesson: Lesson) -> Needs:
    """For each step, the first step that gives each thing it needs. Unknown names are the reader's matter."""
    measured: dict[str, int] = {}
    named: dict[str, int] = {}
    for place, moment in enumerate(lesson.moments):
        measured = {**dict.fromkeys(moment.step.measures, place), **measured}
        named |= {moment.step.name: place} if moment.step.name else {}
    return {
        place: {
            **{("builds_on", name): measured[name] for name in moment.step.builds_on if name in measured},
            **{("after", name): named[name] for name in moment.step.after if name in named},
        }
        for place, moment in enumerate(lesson.moments)
    }


def _reached(needs: Needs, start: int) -> frozenset[int]:
    """Every step that one step needs, and that those need in turn."""
    reached: set[int] = set()
    waiting = [start]
    while waiting:
        for other in needs[waiting.pop()].values():
            if other not in reached:
                reached.add(other)
                waiting.append(other)
    return frozenset(reached)
