"""An exception is needed, is to a rule that may be excused, and ends as soon as the department says.

Why: an exception is a promise to come back to it. One that has run out, or excuses nothing, hides what will
be wrong next; and nobody here can make an exception from the law or from physics.

Wrong:
    source bench:
      exceptions:
        - rule: hand-to-source-distance
          reason: The holder is short.
          approved_by: approver
          on: 2025-12-01
          expires: 2026-06-01

Right:
    source bench:
      numbers: {hand distance: {value: 90 mm}}
      exceptions:
        - rule: hand-to-source-distance
          reason: The holder is short.
          approved_by: approver
          on: 2025-12-01
          expires: 2026-06-01

Whose: this handbook; how long an exception may stand is the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import whose
from clampstand.model.base import Interval
from clampstand.model.practical import AllowedException

ID = "exception-valid"
SEVERITY = Severity.STOP
LIMIT = "planning.exception-interval"
RULE = Whose(Layer.HANDBOOK, "an exception is needed, allowed, and ends")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every exception of the practical."""
    practical, day = lesson.practical, lesson.book.department.computed_for
    for index, entry in enumerate(practical.exceptions):
        limit = lesson.limit(LIMIT)
        longest = limit.value if limit is not None and isinstance(limit.value, Interval) else None
        too_long = longest is not None and entry.expires > longest.after(entry.on)
        key, fault, mend = "rule", "", ""
        if entry.expires < day:
            key, fault, mend = (
                "expires",
                f"ended on {entry.expires}",
                "mend what it excused, then take it out",
            )
        elif too_long or entry.expires < entry.on:
            key, fault, mend = "expires", f"runs from {entry.on} to {entry.expires}", "choose an earlier day"
        else:
            fault, mend = _fault(lesson, entry)
        if fault:
            yield Problem(
                practical.at("exceptions", index, key),
                f"the exception to {entry.rule} {fault}",
                found=f"{entry.rule}, {entry.on} to {entry.expires}",
                needed=f"an exception that is needed and ends within {longest or 'a year'}",
                mend=mend,
                whose=whose(limit) if too_long and limit is not None else RULE,
            )


def _fault(lesson: Lesson, entry: AllowedException) -> tuple[str, str]:
    """What is wrong with the rule it names, and how to mend it; nothing where it is needed and allowed."""
    from clampstand.checks import RULES  # noqa: PLC0415 - the catalogue lists this rule too

    rule = next((rule for rule in RULES if rule.id == entry.rule), None)
    if rule is None:
        return "names no rule of this handbook", "write the id as it stands in a finding"
    if rule.id == ID or rule.check is None:
        return "is to a rule that is not about one practical", "take it out"
    problems = list(rule.check(lesson))
    if not problems and lesson.knows_its_limits:
        return "excuses nothing", "take it out"
    if problems and not any(_is_waivable(problem) for problem in problems):
        layer = problems[0].whose.layer if problems[0].whose else Layer.HANDBOOK
        return f"would excuse what is {layer}", "mend what it is about; nobody here may allow it"
    return "", ""


def _is_waivable(problem: Problem) -> bool:
    known = problem.whose
    return known is not None and known.waivable and known.layer in (Layer.LOCAL, Layer.GUIDANCE)
