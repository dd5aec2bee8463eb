"""An allowance is a part of what is given out: not less than a tenth of it, and not more than all of it.

Why: what waits for loss and second tries is ordered with the rest. A hundredth of it helps nobody, and ten
times as much is a slip that fills the store, or the room with gas.

Wrong:
    cold bench:
      kit:
        2: {allowance: 1 L}

Right:
    cold bench:
      kit:
        2: {allowance: 20 mL}

Whose: common practice in preparation rooms.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import is_over, is_under, shown_best

ID = "allowance-in-proportion"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "an allowance is a part of what it is added to")
LEAST = 0.1


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every allowance of more than nothing, against what the class is given in all."""
    practical = lesson.practical
    for index, line in enumerate(practical.kit):
        total = lesson.sheet.totals[index]
        if line.allowance is None or line.amount is None or total.amount is None or total.allowance is None:
            continue
        given, extra = total.amount, total.allowance
        if line.allowance.kind != line.amount.kind or extra.magnitude <= 0 or given.magnitude <= 0:
            continue
        if is_under(extra, LEAST * given) or is_over(extra, given):
            all_of_it = shown_best(given, line.amount.kind)
            yield Problem(
                practical.at("kit", index, "allowance"),
                f"{line.allowance} of {line.item} wait besides the {all_of_it} that are given out",
                found=str(line.allowance),
                needed=f"from a tenth of {all_of_it} to as much again",
                mend="look for a slip in the allowance or in the amount; what is used belongs to the amount",
                whose=RULE,
            )
