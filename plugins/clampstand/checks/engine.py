"""Runs every rule over a book; what an allowed exception excuses is said, not hidden."""

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from clampstand.checks import RULES
from clampstand.checks.rule import Lesson, Rule
from clampstand.findings import Layer, Problem, Severity, Spot
from clampstand.model.book import Book
from clampstand.model.practical import AllowedException, Practical


@dataclass(frozen=True, slots=True)
class Verdict:
    """A problem with the rule that found it, how grave it is here, and the definition it is about."""

    rule: str
    severity: Severity
    subject: str
    problem: Problem


def lessons_of(book: Book) -> Mapping[str, Lesson]:
    """Every practical of a book as the rules see it; what is replayed and worked out for them is kept."""
    return {its_id: Lesson(practical, book) for its_id, practical in book.practicals.items()}


def verdicts(book: Book, lessons: Mapping[str, Lesson] | None = None) -> Iterator[Verdict]:
    """What every rule finds in a book; in its lessons, where they have been made already."""
    for lesson in (lessons_of(book) if lessons is None else lessons).values():
        yield from verdicts_on(lesson)
    of_rows = _things_on_record(book)
    for rule in RULES:
        if rule.check_book is not None:
            for problem in rule.check_book(book):
                subject = of_rows.get(problem.spot.row) or _subject(problem.spot)
                yield Verdict(rule.id, problem.severity or rule.severity, subject, problem)


def _things_on_record(book: Book) -> Mapping[Spot, str]:
    """The rows of the records → the source, supply or item each is about, as pages ask for it."""
    about = {row.spot: f"sources/{row.source}" for row in book.leak_tests.values()}
    about |= {row.spot: f"sources/{row.source}" for row in book.source_counts.values()}
    about |= {row.spot: f"supplies/{row.unit}" for row in book.inspections.values()}
    for shelf in ("sources", "supplies", "kit"):
        of_it = (fault for fault in book.faults.values() if fault.thing in book.shelf(shelf))
        about |= {fault.spot: f"{shelf}/{fault.thing}" for fault in of_it}
    return about


def _subject(spot: Spot) -> str:
    """The shelf and id of the definition a spot lies in: ``sources/S-A2``, as pages ask for it."""
    folder, _, name = spot.file.removesuffix(".yml").partition("/")
    return f"{name}/{spot.route[0]}" if folder == "department" and spot.route else f"{folder}/{name}"


def verdicts_on(lesson: Lesson) -> Iterator[Verdict]:
    """What every rule finds in one practical."""
    practical = lesson.practical
    subject = f"{practical.shelf}/{practical.id}"
    for rule in RULES:
        for problem in rule.check(lesson) if rule.check else ():
            yield _verdict(rule, lesson, subject, problem)


def _verdict(rule: Rule, lesson: Lesson, subject: str, problem: Problem) -> Verdict:
    excuse = _excuse_for(rule, lesson.practical, lesson.book.department.computed_for)
    if excuse is not None and _may_be_excused(problem):
        return Verdict(rule.id, Severity.WARNING, subject, _excused(problem, excuse))
    return Verdict(rule.id, problem.severity or rule.severity, subject, problem)


def _excused(problem: Problem, excuse: AllowedException) -> Problem:
    allowed = f"allowed until {excuse.expires} by {excuse.approved_by}: {excuse.reason}"
    return replace(problem, message=f"{problem.message} ({allowed})")


def _excuse_for(rule: Rule, practical: Practical, day: dt.date) -> AllowedException | None:
    """The exception in force for a rule on a day; an expired one excuses nothing."""
    in_force = (entry for entry in practical.exceptions if entry.rule == rule.id and rule.excusable)
    return next((entry for entry in in_force if entry.on <= day <= entry.expires), None)


def _may_be_excused(problem: Problem) -> bool:
    """Whether a department may allow it at all: never what the law or physics says."""
    whose = problem.whose
    return whose is not None and whose.waivable and whose.layer in (Layer.LOCAL, Layer.GUIDANCE)
