"""Supplies as rules see them: which a practical uses, whether a touch can hurt, and what each feeds."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Spot
from clampstand.limits import keeps, the_limit
from clampstand.model.book import Book
from clampstand.model.kit import Item, Output
from clampstand.model.limit import Limit
from clampstand.model.practical import Circuit
from clampstand.units import Amount, Quantity, is_over

TOUCH_VOLTAGE = "electrical.touch-voltage"


@dataclass(frozen=True, slots=True)
class Used:
    """A supply a practical uses, where it first names it, and the circuits it feeds."""

    id: str
    item: Item
    spot: Spot
    circuits: tuple[Circuit, ...]


def named_supplies(lesson: Lesson) -> dict[str, Spot]:
    """Every item used as a supply: named by a circuit, switched on, or listed with an output."""
    practical = lesson.practical
    kit = lesson.book.kit
    spots = {
        line.item: practical.at("kit", number, "item")
        for number, line in enumerate(practical.kit)
        if line.item in kit and kit[line.item].output is not None
    }
    for number, circuit in enumerate(practical.circuits):
        spots.setdefault(circuit.supply, practical.at("circuits", number, "supply"))
    for moment in lesson.moments:
        for item_id in moment.step.switches_on:
            spots.setdefault(item_id, lesson.spot(moment.ref, "switches_on", item_id).key())
    return spots


def dangerous_supplies(lesson: Lesson) -> Iterator[tuple[Used, Output]]:
    """The supplies whose voltage can go above what a touch does not hurt."""
    for item_id, spot in named_supplies(lesson).items():
        item = lesson.book.kit.get(item_id)
        if item is not None and item.output is not None and can_hurt(lesson, item.output):
            circuits = tuple(c for c in lesson.practical.circuits if c.supply == item_id)
            yield Used(item_id, item, spot, circuits), item.output


def so_throughout(lesson: Lesson) -> dict[str, str]:
    """What is so for the whole practical: the kind of current, where all supplies that can hurt agree."""
    kinds = {output.current for _, output in dangerous_supplies(lesson)}
    return {"current": kinds.pop()} if len(kinds) == 1 else {}


def used_as_supplies(book: Book) -> frozenset[str]:
    """The items that feed something in some practical, or that have an output and are on its kit list."""
    giving = {item.id for item in book.kit.values() if item.output is not None}
    practicals = book.practicals.values()
    feeding = (circuit.supply for practical in practicals for circuit in practical.circuits)
    return frozenset(feeding).union(*(practical.items & giving for practical in practicals))


def can_hurt(lesson: Lesson, output: Output) -> bool:
    """Whether an output can exceed the touch voltage; it can where nobody says what that is."""
    return _exceeds(output, lesson.limit(TOUCH_VOLTAGE, current=output.current))


def can_hurt_in(book: Book, output: Output) -> bool:
    """The same for whoever has a book and no lesson."""
    return _exceeds(output, the_limit(TOUCH_VOLTAGE, book, current=output.current))


def _exceeds(output: Output, limit: Limit | None) -> bool:
    return limit is None or not keeps(size_of(output.greatest_voltage), limit)


def size_of(amount: Amount) -> Quantity:
    """The greatest size of an amount, whatever its sign: a negative voltage hurts as much."""
    if amount.low.magnitude >= 0:
        return amount.high
    return abs(amount.low) if is_over(abs(amount.low), abs(amount.high)) else abs(amount.high)


def is_dangerous(lesson: Lesson, item_id: str) -> bool:
    """Whether a supply can hurt; so it is counted if its output is not known."""
    item = lesson.book.kit.get(item_id)
    return item is None or item.output is None or can_hurt(lesson, item.output)


def fed_by(lesson: Lesson, item_id: str) -> frozenset[str]:
    """What becomes live with a supply: the supply itself and everything its circuits feed."""
    fed = (
        name for circuit in lesson.practical.circuits if circuit.supply == item_id for name in circuit.feeds
    )
    return frozenset((item_id, *fed))


def voltages_used(lesson: Lesson) -> Iterator[tuple[str, str, Amount, Spot]]:
    """Every voltage used, once: supply, name of the number, amount and where the number is declared."""
    practical = lesson.practical
    uses = [(circuit.supply, circuit.voltage) for circuit in practical.circuits]
    uses += [pair for moment in lesson.moments for pair in moment.step.switches_on.items()]
    for supply, name in dict.fromkeys(uses):
        number = practical.numbers.get(name)
        if number is not None:
            yield supply, name, number.value, practical.at("numbers", name, "value")


def kind_of_current(output: Output) -> str:
    """In words, for a message."""
    return "direct current" if output.current == "dc" else "alternating current"
