"""A limit says that it was read at its source if, and only if, its citation says so too.

Why: every page marks what is from memory or second hand. A value that passes for read is believed, and one
that passes for unread makes people doubt the rest.

Wrong:
    citations: {house-rules: {kind: handbook, read: second hand}}

Right:
    citations: {house-rules: {kind: handbook, read: excerpt}}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.citation import Citation

ID = "read-at-its-source"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what was read is told from what was not")


def check_book(book: Book) -> Iterator[Problem]:
    """Every limit of every pack, against its citation."""
    for pack in book.packs.values():
        for limit in pack.limits:
            citation = book.citations.get(limit.citation)
            if citation is None or (limit.verified == "yes") == _was_read(citation):
                continue
            yield Problem(
                limit.at("verified"),
                f"{limit.title} says verified: {limit.verified}, and {citation.id} was {_how(citation)}",
                found=f"verified: {limit.verified}",
                needed="yes where the source itself was read, or where it is the department's own practice",
                mend="read the source, or say in both places that nobody has",
                whose=RULE,
                related=((citation.at("read"), "how it was read"),),
            )


def _was_read(citation: Citation) -> bool:
    """Whether there was nothing more to read: common practice has no other source than those who keep it."""
    return citation.is_verified or citation.kind == "common practice"


def _how(citation: Citation) -> str:
    return {"memory": "written from memory", "second hand": "read second hand"}.get(
        citation.read, f"read ({citation.read})"
    )
