"""A word that says how comes with the word that says what.

Why: a tool without a source, a container with nothing put into it, or a time limit with nothing to count from
tells that half of a step has been lost.

Wrong:
    cold bench:
      run:
        6: {do: Close the box., handles: (left out)}

Right:
    cold bench:
      run:
        6: {do: Close the box., handles: (left out), puts_in: (left out)}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "words-together"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a step says both what is done and how")
NEEDS: dict[str, tuple[str, ...]] = {
    "puts_in": ("handles", "puts_back", "sets_down"),
    "holds_with": ("takes_out", "picks_up", "sets_down", "puts_back", "handles", "touches"),
    "discharges_with": ("discharges",),
    "within": ("after",),
    "fades_with": ("measures",),
}
"""Word → those of which it needs one in the same step."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every word of every step that needs another."""
    for moment in lesson.moments:
        for word, any_of in NEEDS.items():
            if getattr(moment.step, word) and not any(getattr(moment.step, other) for other in any_of):
                if word == "holds_with" and moment.before.out:
                    continue  # a source that is out stays in its tool from step to step
                yield Problem(
                    lesson.spot(moment.ref, word),
                    f"{moment.ref} says {word} and not what it is about",
                    found=f"{word}: {getattr(moment.step, word)}",
                    needed=" or ".join(any_of),
                    mend=f"write {any_of[0]}, or take {word} out",
                    whose=RULE,
                )
