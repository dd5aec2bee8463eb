"""The three numbers that matter most in a practical: first on its page and on its card."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.supplies import can_hurt_in
from clampstand.limits import the_limit
from clampstand.model.limit import Limit
from clampstand.model.practical import Practical
from clampstand.rendering.contents import Contents
from clampstand.rendering.prose import unbroken

HOW_MANY = 3
"""As many as anybody keeps in mind while something sparks."""
_CURRENT = "electrical.current"


@dataclass(frozen=True, slots=True)
class KeyNumber:
    """A number to keep in mind: what it is, how much, and the strictest limit it keeps to if there is one."""

    name: str
    value: str
    limit: Limit | None


def key_numbers(practical: Practical, contents: Contents) -> tuple[KeyNumber, ...]:
    """One for each limit that a declared number obeys, the supplies that can hurt, then other numbers.

    A supply that can hurt has its place among the three whatever else is declared: the one that is
    mistaken for it kills.
    """
    limited, free = _declared(practical, contents)
    supplies = tuple(_supplies(practical, contents))
    room = max(HOW_MANY - len(supplies), 0)
    return (*limited[:room], *supplies, *limited[room:], *free)[:HOW_MANY]


def _declared(
    practical: Practical, contents: Contents
) -> tuple[tuple[KeyNumber, ...], tuple[KeyNumber, ...]]:
    """The declared numbers: the first that obeys each limit, and all others."""
    first: dict[str, KeyNumber] = {}
    others: list[KeyNumber] = []
    for name, number in practical.numbers.items():
        limit = contents.limit_of(number)
        shown = KeyNumber(name, unbroken(str(number.value)), limit)
        if limit is None or limit.key in first:
            others.append(shown)
        else:
            first[limit.key] = shown
    return tuple(first.values()), tuple(others)


def _supplies(practical: Practical, contents: Contents) -> Iterator[KeyNumber]:
    """What each supply that can hurt drives through whatever shorts it."""
    book = contents.book
    for item_id in dict.fromkeys(circuit.supply for circuit in practical.circuits):
        output = book.kit[item_id].output if item_id in book.kit else None
        if output is None:
            continue
        limit = the_limit(_CURRENT, book, current=output.current)
        if limit is not None and can_hurt_in(book, output):
            current = unbroken(str(output.short_circuit_current))
            yield KeyNumber(f"{book.kit[item_id].name}, shorted", current, limit)
