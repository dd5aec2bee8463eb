"""One value before and after: whether it means the same, what became of it, whether more is allowed now."""

from clampstand.model.base import Interval
from clampstand.units import Amount, NotAnAmount, digits, read_amount

FLOORS = ("at_least", "more_than", "at_least_age", "waits", "youngest")
"""What asks for no less than its value: a lower one allows more."""
CEILINGS = (
    *("at_most", "less_than", "at_most_count", "at_most_interval"),
    *("every", "lasts", "review_every", "within"),
)
"""What asks for no more than its value: a higher one allows more."""
GUARDS = frozenset(
    {
        *("hazards", "excludes", "controls", "emergency", "worn", "warn", "never_into", "packs", "limits"),
        *("puts_on", "puts_up", "washes", "needs_washing", "discharges", "waits"),
    }
)
"""What guards somebody: to take one out loosens."""
LEAVE = frozenset({"exceptions", "supersedes"})
"""What gives leave: to add one loosens."""

_DAYS = {"day": 1.0, "week": 7.0, "month": 30.4, "year": 365.25}


def read(value: object) -> object:
    """A text as the quantity it may be, or else as it is."""
    try:
        return read_amount(value) if isinstance(value, str) else value
    except NotAnAmount:
        return value


def became(old: object, new: object) -> str:
    """The old and the new value, of quantities with their ratio: ``2 m → 1 m (×0.500)``."""
    told = f"{_written(old)} → {_written(new)}"
    if isinstance(old, Amount) and isinstance(new, Amount) and old.kind == new.kind != "temperature":
        before, after = _size(old), _size(new)
        return f"{told} (×{digits(after / before, 3)})" if before and after else told
    return told


def _written(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "nothing" if value is None else str(value)


def _size(amount: Amount) -> float:
    return float(amount.value.to_base_units().magnitude)


def loosens(old: object, new: object, name: str, floor: bool | None) -> bool | None:
    """Whether a value allows more than the one before it; None where neither can be said.

    Args:
        old: the value before.
        new: the value after.
        name: the field.
        floor: True where no less than the value is asked for, False where no more, None where neither.
    """
    if name in GUARDS and (old is None or new is None):
        return new is None
    if name == "waivable":
        return new == "yes"
    return None if floor is None else _allows_more(old, new, floor)


def _allows_more(old: object, new: object, floor: bool) -> bool | None:
    if isinstance(old, Amount) and isinstance(new, Amount) and old.kind == new.kind:
        return bool(new.value < old.value) is floor
    if isinstance(old, Interval) and isinstance(new, Interval):
        return (new.count * _DAYS[new.unit] < old.count * _DAYS[old.unit]) is floor
    if isinstance(old, int) and isinstance(new, int):
        return (new < old) is floor
    return None
