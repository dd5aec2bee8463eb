"""A practical with other numbers declared, for outside examples that are not the demo's own."""

from clampstand.model.practical import Practical
from clampstand.model.step import Number
from clampstand.units import read_amount


def with_numbers(practical: Practical, **numbers: str) -> Practical:
    """The practical with these numbers instead of its own."""
    declared = {name: Number(value=read_amount(text)) for name, text in numbers.items()}
    return practical.model_copy(update={"numbers": declared})


def given(practical: Practical, calculator: str) -> dict[str, str]:
    """What a practical gives the calculator of a name, the first time it asks."""
    return next(dict(entry.given) for entry in practical.expect if entry.compute == calculator)
