"""Every declared number says why it has its value: by a limit, a source, or a reason.

Why: a number that nobody can trace is copied from page to page. When it is wrong, nothing tells whether it
was read, worked out or guessed; what is common practice or from memory is believed only as far as that goes.

Wrong:
    high tension bench:
      numbers:
        gap: {value: 3 mm}

Right:
    high tension bench:
      numbers:
        gap: {value: 3 mm, because: common practice}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "reason-given"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a number is limited, has been read somewhere, or is explained")
WORDS = ("obeys", "source", "because", "half_life_of", "fades_with")
"""What says it; a number that fades with a source was found with that source."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every declared number, but for what a calculator works out and the handbook then compares with it."""
    practical = lesson.practical
    worked_out = {entry.at for entry in practical.expect if entry.compute}
    for name, number in practical.numbers.items():
        if name not in worked_out and not any(getattr(number, word) for word in WORDS):
            yield Problem(
                practical.at("numbers", name),
                f"{name} is {number.value}, and nobody says why",
                found="a value alone",
                needed=f"one of {', '.join(WORDS[:-1])}",
                mend="write source, or because: with the reason, common practice or from memory",
                whose=RULE,
            )
