"""How much is left of what decays, after a time or by the department's day."""

import datetime as dt

from clampstand.calculators.activity_today import nuclide_of
from clampstand.calculators.worked import CannotWork
from clampstand.checks.rule import Lesson
from clampstand.model.department import Source
from clampstand.physics.decay import activity_after
from clampstand.units import Amount, Quantity, q, quantity

HALF = q("50 %")
_ALL = q("100 %")


def left_after(time: Quantity, half_life: Amount) -> Quantity:
    """The part that is left after a time, with the shortest half-life the amount allows."""
    left: Quantity = activity_after(q("1 Bq"), half_life.low, time) / q("1 Bq") * _ALL
    return left


def left_today(lesson: Lesson, source: Source, since: dt.date | None = None) -> Quantity | None:
    """The part of a source's activity that is left on the department's day.

    Args:
        lesson: for the figures and the day.
        source: the source.
        since: the day the whole of it is of; None for its reference date.

    Returns:
        None where there are no figures for its nuclide, or the day is still to come.
    """
    try:
        half_life = nuclide_of(source, lesson.book).half_life.value
    except CannotWork:
        return None
    days = (lesson.book.department.computed_for - (since or source.reference_date)).days
    return None if days < 0 else left_after(quantity(days, "day"), half_life)


def in_per_cent(part: Quantity) -> str:
    """A part of one, for a message."""
    return f"{float(part.m_as('percent')):.2g}\u00a0%"
