"""Working out once what a book settles: a book never changes, and many practicals use one source."""

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

from clampstand.model.base import Entry
from clampstand.model.book import Book

T = TypeVar("T")
E = TypeVar("E", bound=Entry)


def once_a_book(work: Callable[[E, Book], T]) -> Callable[[E, Book], T]:
    """Remembers, beside the book, what was worked out of it for one of its definitions.

    Another day or another register is another book. A definition that is not the book's own is never
    remembered.
    """

    @wraps(work)
    def remembering(entry: E, book: Book) -> T:
        if book.shelf(entry.shelf).get(entry.id) is not entry:
            return work(entry, book)
        known: dict[str, T] = vars(book).setdefault(f"_{work.__name__}_of", {})
        if entry.id not in known:
            known[entry.id] = work(entry, book)
        return known[entry.id]

    return remembering
