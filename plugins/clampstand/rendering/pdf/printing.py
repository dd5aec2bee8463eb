"""Cards as PDF: the data handed to Typst, and what it refuses said in words."""

import datetime as dt
import json
import re
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

from clampstand.calculators.day import known_lessons
from clampstand.model.days import written_day
from clampstand.rendering.contents import Contents, Paper
from clampstand.rendering.pdf.data import emergency_data, practical_data, skill_data, wall_data
from clampstand.rendering.pdf.words import Data

if TYPE_CHECKING:
    from typst import Compiler

TEMPLATE = Path(__file__).parent
_FRAME = re.compile(r"^panicked with: (.*)$", re.DOTALL)


class CannotPrint(ValueError):
    """A card that cannot be printed as it stands: too full for its sides, or with a sign without a glyph."""


def all_cards(contents: Contents) -> Iterator[tuple[str, Data]]:
    """The data of every card and its path without ending, in the order of the cards for the browser."""
    book = contents.book
    for practical in book.practicals.values():
        yield f"practical/{practical.id}", practical_data(practical, contents)
    for practical in book.practicals.values():
        if sheet := wall_data(practical, contents):
            yield f"wall/{practical.id}", sheet
    for emergency in book.emergencies.values():
        yield f"emergency/{emergency.id}", emergency_data(emergency, contents)
    for skill in book.skills.values():
        yield f"skill/{skill.id}", skill_data(skill, contents)


def files(contents: Contents, paper: Paper) -> Iterator[tuple[str, bytes]]:
    """The PDF files of a handbook, by path: all cards in one, each alone, and those of each day's lessons.

    The one with all comes first, for what it refuses is said of every card at once.

    Raises:
        CannotPrint: a card cannot be printed as it stands.
        ModuleNotFoundError: Typst is not installed.
    """
    cards, name = dict(all_cards(contents)), contents.book.department.name
    if cards:
        yield "all.pdf", as_pdf(list(cards.values()), contents.day, paper, f"{name}: all cards")
    for path, card in cards.items():
        yield f"{path}.pdf", as_pdf([card], contents.day, paper)
    for date, paths in _cards_of_days(contents).items():
        title = f"{name}: cards for {written_day(date)}"
        of_the_day = [cards[path] for path in paths if path in cards]
        yield f"day/{date.isoformat()}.pdf", as_pdf(of_the_day, contents.day, paper, title)


def _cards_of_days(contents: Contents) -> Mapping[dt.date, Mapping[str, None]]:
    """The cards of each day's lessons, each once and in their order, with the sheets for the wall."""
    paths: dict[dt.date, dict[str, None]] = {}
    for lesson in known_lessons(contents.book):
        for kind in ("practical", "wall"):
            paths.setdefault(lesson.date, {})[f"{kind}/{lesson.practical}"] = None
    return paths


def as_pdf(cards: Sequence[Data], day: dt.date, paper: Paper, title: str = "") -> bytes:
    """Cards as one PDF, two sides each, emergencies and walls one: the same bytes for the same cards and day.

    Args:
        cards: what each says, as made by this folder's ``data``.
        day: the day they are dated by.
        paper: what they are printed on.
        title: the title of the file; the first card's where none is given.

    Raises:
        CannotPrint: a card does not fit, and by how many millimetres, or has a character without a glyph.
        ModuleNotFoundError: Typst is not installed.
    """
    midnight = dt.datetime(day.year, day.month, day.day, tzinfo=dt.UTC)
    with _in_words():
        made = compiler().compile(
            sys_inputs=inputs(cards, day, paper, title or cards[0]["title"]),
            format="pdf",
            pdf_standards=["ua-1"],
            timestamp=midnight,
        )
    return made if isinstance(made, bytes) else b""


def inputs(cards: Sequence[Data], day: dt.date, paper: Paper, title: str) -> dict[str, str]:
    """Everything the template is told, as JSON: no word of an author ever becomes part of the template."""
    told = {"title": title, "paper": paper, "day": [day.year, day.month, day.day], "cards": list(cards)}
    return {"told": json.dumps(told, ensure_ascii=False)}


@contextmanager
def _in_words() -> Iterator[None]:
    """What Typst refuses is refused in its words, without its own frame about them."""
    from typst import TypstError  # noqa: PLC0415 - only who prints needs Typst

    try:
        yield
    except TypstError as refused:
        raise CannotPrint(_FRAME.sub(r"\1", refused.message)) from refused


@cache
def compiler(template: Path = TEMPLATE) -> "Compiler":
    """The compiler with one template and its type alone: what is installed on a machine changes nothing."""
    from typst import Compiler, Fonts  # noqa: PLC0415 - only who prints needs Typst

    fonts = Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[template / "fonts"])
    return Compiler(template / "card.typ", root=template, font_paths=fonts, ignore_system_fonts=True)
