"""The way through the house: read, judge, work out, make pages. One line a station."""

import gc
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, ParamSpec, TypeVar

from clampstand.calculators.sheet import Sheet
from clampstand.checks import RULES, Lesson
from clampstand.checks.engine import Verdict, lessons_of, verdicts
from clampstand.findings import Finding, in_order
from clampstand.model.book import Book
from clampstand.reading import Reading, read

if TYPE_CHECKING:
    from clampstand.rendering.contents import Contents, Paper
    from clampstand.rendering.page import SitePage


P = ParamSpec("P")
T = TypeVar("T")


def _keeping_everything(work: Callable[P, T]) -> Callable[P, T]:
    """Leaves Python's search for unreachable cycles until afterwards.

    What is read and made here is kept to the end, so a search finds nothing, and it looks through all of it
    again and again: half the time of a build. Later searches pass over it too, until it is made anew.
    """

    @wraps(work)
    def undisturbed(*args: P.args, **kwargs: P.kwargs) -> T:
        searching = gc.isenabled()
        gc.unfreeze()
        gc.disable()
        try:
            return work(*args, **kwargs)
        finally:
            gc.freeze()
            if searching:
                gc.enable()

    return undisturbed


@dataclass(frozen=True)
class Handbook:
    """A department's content, read and judged.

    Args:
        reading: what was read, with the places of everything.
        findings: everything found, in order.
        lessons: the practicals as they were judged, with what was worked out for them.
    """

    reading: Reading
    findings: tuple[Finding, ...]
    lessons: Mapping[str, Lesson]

    @property
    def stops(self) -> bool:
        """Whether nothing may be published."""
        return self.reading.book is None or any(finding.stops for finding in self.findings)

    @property
    def book(self) -> Book:
        """The content. Raises ValueError where not even the department could be read."""
        if self.reading.book is None:
            raise ValueError("the department could not be read")
        return self.reading.book


@_keeping_everything
def handbook(content: Path) -> Handbook:
    """Reads and judges a content folder. Bad content gives findings, never an exception.

    Raises:
        NotADirectoryError: there is no such folder.
    """
    reading = read(content)
    if reading.book is None:
        return Handbook(reading, reading.findings, {})
    lessons = lessons_of(reading.book)
    found = [_placed(verdict, reading) for verdict in verdicts(reading.book, lessons)]
    return Handbook(reading, tuple(in_order([*reading.findings, *found])), lessons)


def _placed(verdict: Verdict, reading: Reading) -> Finding:
    """A verdict with the lines and columns of its spots."""
    problem, places = verdict.problem, reading.places
    whose_spot = problem.whose.spot if problem.whose else None
    return Finding(
        place=places.of(problem.spot),
        rule=verdict.rule,
        severity=verdict.severity,
        message=problem.message,
        found=problem.found,
        needed=problem.needed,
        mend=problem.mend,
        whose=problem.whose,
        whose_place=places.of(whose_spot) if whose_spot else None,
        related=tuple((places.of(spot), words) for spot, words in problem.related),
        subject=verdict.subject,
    )


def sheets(lessons: Mapping[str, Lesson]) -> Mapping[str, Sheet]:
    """The worked numbers of every practical, by its id: the same that were judged."""
    return {its_id: lesson.sheet for its_id, lesson in lessons.items()}


@_keeping_everything
def site_pages(judged: Handbook, paper: "Paper | None" = None) -> "tuple[SitePage, ...]":
    """Every page of the site. While something stops it, the front page says what, for whoever mends it.

    Args:
        judged: the content, read and judged.
        paper: the paper of the PDF cards that lie beside the pages; None where there are none.
    """
    from clampstand.rendering.pages.stopped import stopped_page  # noqa: PLC0415 - not on the way of check
    from clampstand.rendering.site import pages  # noqa: PLC0415

    if judged.reading.book is None:
        return (stopped_page(judged.findings),)
    made = tuple(pages(_contents(judged, paper)))
    if not judged.stops:
        return made
    return (stopped_page(judged.findings), *(page for page in made if page.uri != "index.html"))


def markdown_pages(judged: Handbook) -> Mapping[str, str]:
    """The pages of the site as Markdown files, by their path."""
    from clampstand.rendering.markdown import markdown_files  # noqa: PLC0415 - not on the way of check

    return markdown_files(site_pages(judged))


def card_files(judged: Handbook, paper: "Paper") -> "Iterator[tuple[str, bytes]]":
    """The cards as PDF, by path: all in one, each alone, and those of each day.

    Raises:
        CannotPrint: a card cannot be printed as it stands.
        ModuleNotFoundError: Typst is not installed.
    """
    from clampstand.rendering.pdf.printing import files  # noqa: PLC0415 - not on the way of check

    yield from files(_contents(judged), paper)


def _contents(judged: Handbook, paper: "Paper | None" = None) -> "Contents":
    from clampstand.rendering.contents import Contents  # noqa: PLC0415 - not on the way of check

    return Contents(judged.book, sheets(judged.lessons), judged.findings, RULES, paper)
