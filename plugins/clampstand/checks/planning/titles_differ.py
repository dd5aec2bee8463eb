"""No two practicals have the same title.

Why: people ask for a practical by its title. With two of one name the trolley is laid for one of them and the
lesson held from the card of the other.

Wrong:
    high tension bench:
      title: counting  Beside a source

Right:
    high tension bench:
      title: Counting beside a field

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.practical import Practical

ID = "titles-differ"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what is asked for by its title is one thing")


def check_book(book: Book) -> Iterator[Problem]:
    """Every practical against those before it, whatever the case of the letters and the spaces between."""
    first: dict[str, Practical] = {}
    for practical in book.practicals.values():
        other = first.setdefault(" ".join(practical.title.casefold().split()), practical)
        if other is not practical:
            yield Problem(
                practical.at("title"),
                f"{practical.id} and {other.id} have the same title",
                found=practical.title,
                needed="a title of its own",
                mend="say in the title what is different about it",
                whose=RULE,
                related=((other.at("title"), f"the title of {other.id}"),),
            )
