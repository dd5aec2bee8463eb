"""What has to be washed off a bench or a tray has to be washed off hands.

Why: what rubs off on a bench has gone through somebody's fingers. A list that names the bench and not the
hands sends people to their lunch with it.

Wrong:
    kit: {culture: {needs_washing: bench}}

Right:
    kit: {culture: {needs_washing: [bench, hands]}}

Whose: common practice.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book

ID = "hands-washed-too"
SEVERITY = Severity.STOP
RULE = Whose(Layer.LOCAL, "hands are washed after all that is washed off anything else")


def check_book(book: Book) -> Iterator[Problem]:
    """Every item of the kit that leaves something behind."""
    for item in book.kit.values():
        if item.needs_washing and "hands" not in item.needs_washing:
            yield Problem(
                item.at("needs_washing"),
                f"{item.name} is washed off the {' and the '.join(item.needs_washing)}, and not off hands",
                found=f"needs_washing: {', '.join(item.needs_washing)}",
                needed="hands besides",
                mend="write hands under needs_washing",
                whose=RULE,
            )
