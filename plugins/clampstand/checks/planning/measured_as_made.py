"""What a supply was measured to drive is about what its kind can drive.

Why: the current that a supply can drive decides whether it may be touched. If the test of one and the data of
its kind are far apart, one of them has a slip, or the supply is broken in the dangerous way.

Wrong:
    supplies: {T-1: {measured_current: 0.2 mA}}

Right:
    supplies: {T-1: {measured_current: 1.9 mA}}

Whose: physics: one circuit has one short-circuit current.
"""

from collections.abc import Iterator

from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.units import is_over, is_under

ID = "measured-as-made"
SEVERITY = Severity.STOP
RULE = Whose(Layer.PHYSICS, "one circuit has one short-circuit current")
APART = 4
"""How many times as much or as little two measurements of one current may be."""


def check_book(book: Book) -> Iterator[Problem]:
    """Every supply with a measured current, against the data of its kind."""
    for unit in book.supplies.values():
        item = book.kit.get(unit.item)
        if unit.measured_current is None or item is None or item.output is None:
            continue
        measured, made = unit.measured_current, item.output.short_circuit_current
        if is_over(measured.high, made.high * APART) or is_under(measured.low, made.low / APART):
            yield Problem(
                unit.at("measured_current"),
                f"{unit.id} was measured to drive {measured}, and a {item.name} drives {made}",
                found=str(measured),
                needed=f"about {made}",
                mend="measure again, and look at the units of both",
                whose=RULE,
                related=((item.at("output", "short_circuit_current"), "the data of its kind"),),
            )
