"""Two readings of one value: whether they are the same, and whether the difference hides a danger."""

import datetime as dt

from clampstand.findings import Severity
from clampstand.model.base import Entry, is_same_value
from clampstand.model.limit import Limit, Statement
from clampstand.units import Amount

TOO_SMALL_IS_DANGEROUS = frozenset(
    {
        *("activity", "reference_date", "concentration", "capacitance"),
        *("greatest_voltage", "short_circuit_current"),
    }
)
"""What looks safer than it is when too little of it is written, or too early a day."""
TOO_LARGE_IS_DANGEROUS = frozenset({"volume", "air_changes", "length", "output_resistance"})
"""What looks safer than it is when too much of it is written."""


def is_same(first: object, second: object) -> bool:
    """Whether two readings mean the same, in whatever units."""
    if isinstance(first, Statement) and isinstance(second, Statement):
        return first.means_as(second)
    return is_same_value(first, second)


def shown(value: object) -> str:
    """A value as a message says it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return "nothing" if value is None else str(value)


def severity_of(thing: Entry, field: str, first: object, second: object) -> Severity:
    """A stop where a law may be misquoted or something looks safer than it is; else a warning."""
    if isinstance(thing, Limit):
        return Severity.STOP if "law" in (thing.layer, second) else Severity.WARNING
    if field in TOO_SMALL_IS_DANGEROUS | TOO_LARGE_IS_DANGEROUS:
        wrong_way = _is_less(first, second) is (field in TOO_SMALL_IS_DANGEROUS)
        return Severity.STOP if wrong_way else Severity.WARNING
    return Severity.WARNING if field == "received" else Severity.STOP


def _is_less(first: object, second: object) -> bool:
    """Whether the first is less or earlier; nothing at all is less than anything."""
    if isinstance(first, Amount) and isinstance(second, Amount):
        return bool(first.low < second.low)
    if isinstance(first, dt.date) and isinstance(second, dt.date):
        return first < second
    return True
