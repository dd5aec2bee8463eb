"""A source is contained in the way the practical was written and approved for.

Why: an open source needs another room, gloves, trays and waste than a sealed one, and another approval. A
page written for the one gives no protection with the other.

Wrong:
    source bench:
      sources:
        1: {one_of: [N-1, N-5]}
      run:
        7: {washes: [hands, bench]}

Right:
    source bench:
      sources:
        1: {one_of: [N-1, N-2]}

Whose: the department's own rule; permits name the form of a source too.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sources import candidates, containment
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "sealed-only"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a practical is approved for one form of source")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every source a slot may be filled with, against the form the slot was written for."""
    for candidate in candidates(lesson):
        source, asked = candidate.source, candidate.slot.form
        form = _in_words(containment(source))
        if containment(source) != asked:
            yield Problem(
                candidate.spot,
                f"{source.id} is {form}, and the practical is for {_in_words(asked)}",
                found=source.form,
                needed=_in_words(asked),
                mend=f"take another source, or write and approve a practical for {form}",
                whose=RULE,
                related=((source.at("form"), "its form in the register"),),
            )


def _in_words(form: str) -> str:
    words = {"generator": "a generator, whose eluate is unsealed", "object": "an object, not a sealed source"}
    return words.get(form, f"a {form} source" if form == "sealed" else f"an {form} source")
