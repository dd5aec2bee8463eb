"""Activity of a source on the day the handbook is computed for."""

from collections.abc import Mapping

from clampstand.calculators.given import source_given
from clampstand.calculators.remembered import once_a_book
from clampstand.calculators.worked import CannotWork, Input, Worked, written
from clampstand.model.book import Book
from clampstand.model.days import written_day
from clampstand.model.department import Source
from clampstand.model.nuclide import Nuclide
from clampstand.model.practical import Practical
from clampstand.physics.decay import activity_after
from clampstand.units import quantity, shown_best


def nuclide_of(source: Source, book: Book) -> Nuclide:
    """The nuclide of a source. Raises CannotWork where there are no figures for it."""
    nuclide = book.nuclides.get(source.nuclide)
    if nuclide is None:
        raise CannotWork(f"there are no figures for {source.nuclide}, the nuclide of {source.id}")
    return nuclide


@once_a_book
def activity_today(source: Source, book: Book) -> Worked:
    """What is left of a source's activity on the department's day.

    Raises:
        CannotWork: no figures for its nuclide, or its reference date is still to come.
    """
    nuclide, day = nuclide_of(source, book), book.department.computed_for
    age = (day - source.reference_date).days
    if age < 0:
        raise CannotWork(f"the reference date of {source.id} lies after {day}")
    half_life = nuclide.half_life
    value = activity_after(source.activity.value, half_life.value.value, quantity(age, "day"))
    return Worked(
        id=f"activity-today/{source.id}",
        title=f"Activity of {source.id} ({source.nuclide}) today",
        value=value,
        kind="activity",
        shown=shown_best(value, "activity", 4),
        formula=activity_after.written,
        inputs=(
            written("activity on the reference date, A₀", source.activity, f"register, {source.id}"),
            Input("reference date", written_day(source.reference_date), f"register, {source.id}"),
            Input("time since, t", f"{age}\u00a0days", f"to {written_day(day)}"),
            written("half-life, T½", half_life.value, "reference figures", half_life.citation),
        ),
        day=day,
        within="as well as the maker's activity is known",
    )


def activity_of_slot(practical: Practical, book: Book, given: Mapping[str, str]) -> tuple[Worked, ...]:
    """The activity today of the source in a slot: ``given: {source: …}``."""
    return (activity_today(source_given(practical, book, given), book),)
