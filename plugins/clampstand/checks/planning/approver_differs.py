"""Nobody approves what they wrote.

Why: whoever wrote it reads what they meant. A second person reads what is there.

Wrong:
    source bench:
      review: {approved_by: author}

Right:
    source bench:
      review: {written_by: supervisor}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.model.skill import Skill

ID = "approver-differs"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "every page is read by a second person")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The practical's own review."""
    yield from _alone(lesson.practical)


def check_book(book: Book) -> Iterator[Problem]:
    """The review of every skill."""
    for skill in book.skills.values():
        yield from _alone(skill)


def _alone(entry: Practical | Skill) -> Iterator[Problem]:
    review = entry.review
    if review.written_by == review.approved_by:
        yield Problem(
            entry.at("review", "approved_by"),
            f"{entry.title}: written and approved by {review.approved_by}",
            found=f"{review.written_by} and {review.approved_by}",
            needed="two different roles",
            mend="ask somebody else to read and approve it",
            whose=RULE,
            related=((entry.at("review", "written_by"), "written by"),),
        )
