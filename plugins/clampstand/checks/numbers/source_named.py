"""A figure that nobody here chose or worked out names its source, and so does a result that is expected.

Why: a reason explains a choice. A figure of nature or of a law has none: it was read somewhere, measured or
remembered, and only the source tells which, and how far it can be believed.

Wrong:
    high tension bench:
      numbers:
        breakdown: {value: 3 MV/m, lies_in: 2 MV/m to 4 MV/m, because: where air between the plates sparks}

Right:
    high tension bench:
      numbers:
        breakdown: {value: 3 MV/m, may_be: 2 MV/m to 4 MV/m, because: what this apparatus is set to}

Whose: this handbook: what was read is told from what was chosen.
"""

from collections.abc import Iterator

from clampstand.checks.holding import worked_out
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.practical import Expectation

ID = "source-named"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a figure that was read names where, and a sight who saw it")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every number that says where it lies, and every expectation with a tolerance that nothing works out."""
    practical = lesson.practical
    known = worked_out(practical)
    for name, number in practical.numbers.items():
        if number.lies_in is not None and number.source is None and name not in known:
            yield Problem(
                practical.at("numbers", name),
                f"{name} is {number.value}, a figure that nobody here chose, and names no source",
                found="no source",
                needed="source: a citation; common practice and memory have theirs too",
                mend="write where it was read; if it was chosen here, write may_be instead of lies_in",
                whose=RULE,
            )
    for index, entry in enumerate(practical.expect):
        if entry.within and entry.source is None and not _is_known(lesson, entry, known):
            yield Problem(
                practical.at("expect", index),
                f"{entry.see or entry.at} is expected within {entry.within}, and nobody says who saw it",
                found="no source",
                needed="source: a citation; common practice has one too",
                mend="write who saw it or where it was read",
                whose=RULE,
            )


def _is_known(lesson: Lesson, entry: Expectation, known: frozenset[str]) -> bool:
    """Whether an expectation is worked out, here or in another entry, or its number names its source."""
    number = lesson.practical.numbers.get(entry.at or "")
    is_read = number is not None and (number.source is not None or number.half_life_of is not None)
    return bool(entry.compute) or entry.at in known or is_read
