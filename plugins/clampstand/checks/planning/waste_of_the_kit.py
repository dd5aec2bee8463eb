"""What is left over was in the kit, and what can't be kept or poured away has its way out.

Why: a way out for something that was never there shows that the wrong name is written, and the right thing
then goes down the sink.

Wrong:
    cold bench:
      waste:
        1: {what: weak-acid}

Right:
    cold bench:
      waste:
        1: {what: thin-spirit}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "waste-of-the-kit"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "everything that is left over has its way out")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every entry under waste, against the kit list."""
    practical = lesson.practical
    for index, waste in enumerate(practical.waste):
        if waste.what not in practical.items:
            yield Problem(
                practical.at("waste", index, "what"),
                f"{waste.what} is left over, and is not on the kit list",
                found=f"what: {waste.what}",
                needed="something of the kit list",
                mend="name what is left over by its id on the kit list",
                whose=RULE,
            )
