"""Of every supply that is switched on or connected it is known what it can give and what it feeds.

Why: whether a touch hurts is worked out from the supply's greatest voltage, its current, its capacitance and
what is connected to it. What is not written down cannot be checked, and an unknown supply is not a safe one.

Wrong:
    high tension bench:
      circuits: (left out)

Right:
    high tension bench:
      circuits:
        1: {feeds: [field-plates, plain-lead]}
      kit:
        4: {item: plain-lead, per: class, spare: 1}

Whose: this handbook: what is not declared cannot be checked.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.supplies import dangerous_supplies, named_supplies, size_of
from clampstand.findings import Layer, Problem, Severity, Spot, Whose
from clampstand.limits import keeps

ID = "supply-described"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what can hurt is described")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every supply a practical names: its output; of a dangerous one its capacitance and its circuit."""
    switched_on = {item for moment in lesson.moments for item in moment.step.switches_on}
    for item_id, spot in named_supplies(lesson).items():
        item = lesson.book.kit.get(item_id)
        if item is not None and item.output is None:
            found = f"{item.name} is used as a supply, and the kit does not say what it can give"
            yield _missing(spot, found, "no output", "its output", item.spot)
    for used, output in dangerous_supplies(lesson):
        if used.id in switched_on and not used.circuits:
            found = f"{used.item.name} is switched on, and no circuit says what it feeds"
            yield _missing(used.spot, found, "no circuit", "its circuit", used.item.spot)
        limit = lesson.limit("electrical.current", current=output.current)
        may_be_used = limit is None or keeps(size_of(output.short_circuit_current), limit)
        if used.circuits and may_be_used and output.capacitance is None:
            found = f"{used.item.name} can hurt, and the kit does not say what capacitance it has"
            yield _missing(used.spot, found, "no capacitance", "its capacitance", used.item.at("output"))
    yield from _no_capacitances(lesson)


def _no_capacitances(lesson: Lesson) -> Iterator[Problem]:
    """What a circuit is said to store, where that is no capacitance and nothing can be worked out of it."""
    numbers = lesson.practical.numbers
    for index, circuit in enumerate(lesson.practical.circuits):
        number = numbers.get(circuit.stores or "")
        if number is not None and number.value.kind != "capacitance":
            spot = lesson.practical.at("circuits", index, "stores")
            message = f"the circuit stores {circuit.stores}, which is no capacitance"
            declared = lesson.practical.at("numbers", circuit.stores or "", "value")
            yield _missing(spot, message, str(number.value), "a capacitance", declared)


def _missing(spot: Spot, message: str, found: str, needed: str, item: Spot) -> Problem:
    mend = f"write {needed}, from the maker's data or a measurement"
    return Problem(spot, message, found, needed, mend, RULE, ((item, "listed here"),))
