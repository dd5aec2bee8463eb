"""How far off still works: the ranges of the numbers that steps quote, for whoever sets up."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from clampstand.model.practical import Phase, Practical
from clampstand.units import Amount


@dataclass(frozen=True, slots=True)
class Margin:
    """A number that a step quotes, and the range in which the practical still works."""

    name: str
    value: Amount
    may_be: Amount
    because: str


def margins(practical: Practical, phases: Iterable[Phase]) -> Iterator[Margin]:
    """The numbers with a range that the steps of some phases quote, as they are declared."""
    told = "\n".join(step.do for phase in phases for step in practical.steps(phase))
    for name, number in practical.numbers.items():
        if number.may_be is not None and f"{{{name}}}" in told:
            yield Margin(name, number.value, number.may_be, number.because or "")
