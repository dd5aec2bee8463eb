"""Working out once what a book settles: a book never changes, and many practicals use one source."""

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

from clampstand.model.book import Book
from clampstand.model.department import Source

T = TypeVar("T")


def once_a_book(work: Callable[[Source, Book], T]) -> Callable[[Source, Book], T]:
    """Remembers, beside the book, what was worked out of it for one of its sources.

    Another day or another register is another book. A source that is not the book's own is never remembered.
    """

    @wraps(work)
    def remembering(source: Source, book: Book) -> T:
        if book.sources.get(source.id) is not source:
            return work(source, book)
        known: dict[str, T] = vars(book).setdefault(f"_{work.__name__}_of", {})
        if source.id not in known:
            known[source.id] = work(source, book)
        return known[source.id]

    return remembering
