"""The path sheet of a practical: what to read, watch and rehearse, in order, and who signs each level."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.calculators.sign_offs import ALONE, holds_for, level_for, needed_for
from clampstand.limits import the_limit
from clampstand.model.base import Interval
from clampstand.model.book import Book
from clampstand.model.citation import Citation
from clampstand.model.emergency import Emergency
from clampstand.model.people import Person
from clampstand.model.practical import PHASES, Phase, Practical
from clampstand.model.skill import Skill
from clampstand.model.step import Step
from clampstand.rendering.contents import Contents
from clampstand.rendering.page import SitePage
from clampstand.rendering.pages.ladder import LEVELS
from clampstand.rendering.pages.making import made
from clampstand.rendering.prose import quotes_of
from clampstand.rendering.titles import titles_of

TO_SIGN = range(1, ALONE + 1)
"""The levels a path sheet has boxes for: reading needs no witness, and training others is another path."""


@dataclass(frozen=True, slots=True)
class ToSign:
    """One row of the boxes to sign: the practical or a skill it asks for.

    Args:
        title: what it is.
        lasts: how long a sign-off of it holds; None where nothing says.
    """

    title: str
    lasts: Interval | None


@dataclass(frozen=True, slots=True)
class Warned:
    """A step that carries a warning, with the phase that numbers it."""

    phase: Phase
    number: int
    step: Step


def path_page(practical: Practical, contents: Contents) -> SitePage:
    """The sheet somebody takes along from reading about a practical to running it alone."""
    book = contents.book
    return made(
        f"paths/{practical.id}.html",
        f"Path sheet: {practical.title}",
        "path",
        contents,
        about=practical,
        practical=practical,
        quotes=quotes_of(practical, book),
        levels=LEVELS,
        skills=skills_for(practical, book),
        emergencies=emergencies_for(practical, book),
        citations=citations_for(practical, book),
        to_watch=to_watch(practical, book),
        signers=signers(book),
        warned=list(warned_steps(practical)),
        titles=titles_of(practical),
        to_sign=list(rows_to_sign(practical, book)),
        levels_to_sign=TO_SIGN,
    )


def skills_for(practical: Practical, book: Book) -> list[Skill]:
    """The skills a practical asks for, in its order."""
    return [book.skills[name] for name in practical.needs.skills if name in book.skills]


def emergencies_for(practical: Practical, book: Book) -> list[Emergency]:
    """The emergencies of a practical and those of its skills, each once."""
    named = dict.fromkeys(practical.emergency)
    for skill in skills_for(practical, book):
        named |= dict.fromkeys(skill.emergency)
    return [book.emergencies[name] for name in named if name in book.emergencies]


def citations_for(practical: Practical, book: Book) -> list[Citation]:
    """What its writers read, and where the limits its numbers obey come from, each once."""
    limits = (the_limit(number.obeys, book) for number in practical.numbers.values() if number.obeys)
    named = dict.fromkeys((*practical.sources_read, *(limit.citation for limit in limits if limit)))
    return [book.citations[name] for name in named if name in book.citations]


def to_watch(practical: Practical, book: Book) -> list[Person]:
    """Whoever runs it alone on the department's day, teacher or technician."""
    day = book.department.computed_for
    return [who for who in book.people.values() if (level_for(who.id, practical.id, day, book) or 0) >= ALONE]


def signers(book: Book) -> list[Person]:
    """Whoever may sign somebody off, by code."""
    return [person for person in book.people.values() if "sign off" in person.may]


def warned_steps(practical: Practical) -> Iterator[Warned]:
    """Every step that carries a warning, numbered as the page and the card number it."""
    for phase in PHASES:
        for number, step in enumerate(practical.steps(phase), start=1):
            if step.warn is not None:
                yield Warned(phase, number, step)


def rows_to_sign(practical: Practical, book: Book) -> Iterator[ToSign]:
    """The practical itself, then each skill, as a sign-off names them."""
    for shelf, name in needed_for(practical.id, book):
        lasts = holds_for((shelf, name), book.department.computed_for, book)
        if shelf == "practicals":
            yield ToSign(practical.title, lasts)
        elif name in book.skills:
            yield ToSign(book.skills[name].title, lasts)
