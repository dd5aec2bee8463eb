"""Judges an edited practical quickly: through the schema, the names and the rules, in memory."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import yaml
from mutation.edits import Edit, Plain, all_edits
from pydantic import TypeAdapter, ValidationError

from clampstand.checks import Lesson
from clampstand.checks.engine import verdicts_on
from clampstand.model.book import Book
from clampstand.model.practical import Practical
from clampstand.reading import read
from clampstand.reading.references import wrong_names

CONTENT = Path(__file__).parents[2] / "content"
_PRACTICAL = TypeAdapter(Practical)


def content() -> Book:
    """The demo department's book."""
    book = read(CONTENT).book
    assert book is not None
    return book


def plain(practical_id: str) -> Plain:
    """A demo practical as plain data."""
    text = (CONTENT / "practicals" / f"{practical_id}.yml").read_text(encoding="utf-8")
    return yaml.load(text, yaml.CBaseLoader)


def found(data: Plain, practical: Practical, book: Book) -> set[tuple[str, str]]:
    """What is found in a practical's data: rule and message of each finding."""
    try:
        edited = _PRACTICAL.validate_python(data).placed(practical.id, practical.spot)
    except ValidationError as error:
        return {("schema", str(error.errors(include_url=False)[0]["msg"]))}
    changed = replace(book, practicals={**book.practicals, practical.id: edited})
    names = {("unknown-id", str(wrong)) for wrong in wrong_names(edited, changed)}
    return names or {(verdict.rule, verdict.problem.message) for verdict in verdicts_on(Lesson(edited, changed))}


def judged(practical_id: str, book: Book) -> Iterator[tuple[Edit, set[str]]]:
    """Every edit of a practical, with the rules that newly found something; none for a survivor."""
    practical, data = book.practicals[practical_id], plain(practical_id)
    before = found(data, practical, book)
    for edit in all_edits(data, practical, book):
        yield edit, {rule for rule, _ in found(edit.data, practical, book) - before}
