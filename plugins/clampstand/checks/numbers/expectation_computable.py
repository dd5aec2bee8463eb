"""What is to be worked out can be worked out.

Why: a page that promises a number and has none leaves its reader to guess one.

Wrong:
    high tension bench:
      expect:
        2: {compute: series-curent, within: 10 %}

Right:
    high tension bench:
      expect:
        2: {compute: series-current, within: 10 %}

Whose: this handbook.
"""

from collections.abc import Iterator
from difflib import get_close_matches

from clampstand.calculators import CALCULATORS
from clampstand.calculators.given import is_usable
from clampstand.calculators.sheet import worked_out
from clampstand.calculators.worked import CannotWork
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.practical import Expectation

ID = "expectation-computable"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a number that is promised is worked out")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every expectation that asks for a calculator, as it is and for every source that may be used today."""
    practical = lesson.practical
    for entry, worked in lesson.sheet.numbers:
        reason = worked if isinstance(worked, CannotWork) else _with_another_source(lesson, entry)
        if reason is not None and lesson.is_whole:
            yield Problem(
                practical.at("expect", practical.expect.index(entry), "given" if entry.given else "compute"),
                f"{entry.compute} cannot be worked out: {reason}",
                found=f"compute: {entry.compute}",
                needed="everything it is worked out from, whichever source is used"
                if entry.compute in CALCULATORS
                else f"one of {', '.join(CALCULATORS)}",
                mend=_mend(entry.compute or ""),
                whose=RULE,
            )


def _with_another_source(lesson: Lesson, entry: Expectation) -> CannotWork | None:
    """Why it cannot be worked out with one of the sources that may fill a slot; None where it always can."""
    practical = lesson.practical
    for slot in practical.sources:
        if slot.name not in (*entry.given.values(), "source"):
            continue
        usable = [source for source in lesson.candidates(slot.name) if is_usable(source, lesson.book)]
        for source in usable[1:]:
            only = slot.model_copy(update={"one_of": (source.id,)})
            slots = tuple(only if each is slot else each for each in practical.sources)
            variant = practical.model_copy(update={"sources": slots})
            worked = worked_out(entry, variant, lesson.book, CALCULATORS)
            if isinstance(worked, CannotWork):
                return CannotWork(f"with {source.id}, {worked}")
    return None


def _mend(compute: str) -> str:
    meant = get_close_matches(compute, CALCULATORS, n=1)
    if compute in CALCULATORS or not meant:
        return "write what is missing, or leave the entry out"
    return f"did you mean {meant[0]}?"
