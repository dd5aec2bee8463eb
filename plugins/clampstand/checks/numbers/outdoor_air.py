"""The air outdoors holds about as much carbon dioxide as it does everywhere.

Why: what dry ice and people add to a room is reckoned from the air outside. If that is written ten times too
clean, the room seems to bear that much more.

Wrong:
    department: {outdoor_carbon_dioxide: 42 ppm}

Right:
    department: {outdoor_carbon_dioxide: 0.04 %}

Whose: physics, by the cited yearly mean; in towns it is a little more.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.units import is_over, is_under

ID = "outdoor-air"
SEVERITY = Severity.STOP
FIGURE = "fraction-outdoors"
APART = 2
"""How many times as much or as little the air of one place may hold as the mean of all."""


def check_book(book: Book) -> Iterator[Problem]:
    """The department's figure, against that of the substance that has one."""
    written = book.department.outdoor_carbon_dioxide
    for substance in book.substances.values():
        figure = substance.figures.get(FIGURE)
        if figure is None:
            continue
        mean = figure.value.value
        if is_over(written.high, mean * APART) or is_under(written.low, mean / APART):
            yield Problem(
                book.department.at("outdoor_carbon_dioxide"),
                f"the air outdoors is said to hold {written} of carbon dioxide, not about {figure.value}",
                found=str(written),
                needed=f"about {figure.value}",
                mend="look for a slip in the unit: per cent for ppm, or a nought too few",
                whose=Whose(Layer.PHYSICS, "air outdoors", figure.citation, substance.spot),
            )
