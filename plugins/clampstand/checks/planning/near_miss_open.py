"""A practical with a severe near miss is not run until something has been changed.

Why: what nearly went wrong will go wrong. The report is closed by a change to the page or the apparatus,
never by time.

Wrong:
    near-misses:
      1: {date: 2026-01-12, practical: source-bench, severity: severe, what: it rolled off the tray, by: T1}

Right:
    near-misses:
      1: {date: 2026-01-12, practical: source-bench, severity: slight, what: tray too far off, by: T1}

Whose: the department's own rule; learning from incidents is law in some places.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "near-miss-open"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "a severe near miss blocks its practical until it is closed with a change")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every open severe report about a practical."""
    for report in lesson.book.near_misses.values():
        if (report.practical, report.severity) == (lesson.practical.id, "severe") and report.closed is None:
            yield Problem(
                report.at("severity"),
                f"{lesson.practical.id} has an open near miss of {report.date}: {report.what}",
                found="severe, not closed",
                needed="a change, and the report closed",
                mend="change the page or the apparatus, print the card again, then close the report",
                whose=RULE,
                related=((lesson.practical.at("title"), "the practical it is about"),),
            )
