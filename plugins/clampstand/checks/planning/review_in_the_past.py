"""A review and a trial lie in the past, and the trial no later than the review.

Why: a day that has not come yet makes a page look fresh for years. It is always a slip, and nobody notices it
until somebody asks who read the page.

Wrong:
    source bench:
      review: {last: 2026-01-16}

Right:
    source bench:
      review: {last: 2026-01-15}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.model.skill import Skill

ID = "review-in-the-past"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what is written as done has been done")


def check(lesson: Lesson) -> Iterator[Problem]:
    """The practical's own review and trial."""
    yield from _ahead(lesson.practical, lesson.book)


def check_book(book: Book) -> Iterator[Problem]:
    """The review of every skill."""
    for skill in book.skills.values():
        yield from _ahead(skill, book)


def _ahead(entry: Practical | Skill, book: Book) -> Iterator[Problem]:
    review, day = entry.review, book.department.computed_for
    if review.last > day:
        yield _problem(entry.at("review", "last"), f"{entry.title}: read through on {review.last}", str(day))
    trial = review.tried_out
    if trial is not None and trial.on > min(review.last, day):
        words = f"{entry.title}: tried out on {trial.on}"
        yield _problem(entry.at("review", "tried_out", "on"), words, str(min(review.last, day)))


def _problem(spot: Spot, words: str, latest: str) -> Problem:
    return Problem(
        spot,
        f"{words}, which is too late to be true",
        found=words.rpartition(" on ")[2],
        needed=f"{latest} or before",
        mend="look at the day in the papers",
        whose=RULE,
    )
