"""A source in use is not past its working life.

Why: seals and windows age. Old sources leak, the oldest radium sources most of all; after the working life
somebody who knows must look and say whether it may stay.

Wrong:
    sources:
      N-2: {reference_date: 2006-01-14}

Right:
    sources:
      N-2: {reference_date: 2006-01-15}

Whose: the maker's advice.
"""

from collections.abc import Iterator

from clampstand.checks.sources import is_in_use
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "source-past-working-life"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.GUIDANCE, "a source is used no longer than its recommended working life")


def check_book(book: Book) -> Iterator[Problem]:
    """Every source in use that has a recommended working life; its last day is still within it."""
    today = book.department.computed_for
    for source in book.sources.values():
        if source.working_life is None or not is_in_use(source):
            continue
        ends = source.working_life.after(source.reference_date)
        if ends < today:
            yield Problem(
                source.at("working_life"),
                f"{source.id} is past its working life of {source.working_life}, which ended on {ends}",
                found=f"measured {source.reference_date}, still in use",
                needed=f"out of use by {ends}, or the advice to keep it",
                mend="retire it; or ask the radiation adviser, and write the life agreed and the advice",
                whose=RULE,
            )
