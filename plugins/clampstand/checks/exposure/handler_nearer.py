"""Whoever holds a source is taken to be nearer to it than those who watch.

Why: the dose that a page shows for the teacher falls with the square of this distance. Written ten times too
far, the dose comes out a hundred times too small, and nobody can see it.

Wrong:
    department: {teacher_to_source: 5 m}

Right:
    department: {teacher_to_source: 40 cm}

Whose: physics, by the least distance for those who watch: forceps are no longer than an arm.
"""

from collections.abc import Iterator

from clampstand.findings import Problem, Severity
from clampstand.limits import the_limit, whose
from clampstand.model.book import Book
from clampstand.units import is_over

ID = "handler-nearer"
SEVERITY = Severity.STOP
LIMIT = "radiation.watchers-to-source"


def check_book(book: Book) -> Iterator[Problem]:
    """The distance taken for the teacher, against the least for watchers."""
    limit, taken = the_limit(LIMIT, book), book.department.teacher_to_source
    if limit is not None and limit.amount is not None and is_over(taken.high, limit.amount.value):
        yield Problem(
            book.department.at("teacher_to_source"),
            f"the teacher who holds a source is taken to be {taken} from it, further than those who watch",
            found=str(taken),
            needed="the length of an arm and forceps",
            mend="look for a slip in the unit or the prefix",
            whose=whose(limit),
        )
