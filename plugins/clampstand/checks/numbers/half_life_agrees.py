"""A half-life that a practical restates is the one of the reference figures.

Why: days instead of years decays a source away on paper, and the class looks for something that isn't there.

Wrong:
    source bench:
      numbers:
        half-life of the source: {value: 30 days, because: known, half_life_of: Cs-137}

Right:
    source bench:
      numbers:
        half-life of the source: {value: 30 years, because: known, half_life_of: Cs-137}

Whose: physics, by the cited tables.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.tolerance import widened
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import is_over, is_under

ID = "half-life-agrees"
SEVERITY = Severity.STOP
AS_ROUNDED = "1 %"
"""Room for the digits a class is told; more than that is another number."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every number that says whose half-life it is."""
    for name, number in lesson.practical.numbers.items():
        nuclide = lesson.book.nuclides.get(number.half_life_of or "")
        if nuclide is None:
            continue
        known = nuclide.half_life
        low, high = widened(number.value, AS_ROUNDED)
        alike = number.value.kind == "time"
        if not alike or is_under(known.value.value, low) or is_over(known.value.value, high):
            yield Problem(
                lesson.practical.at("numbers", name, "value"),
                f"{name} is {number.value}, and {nuclide.id} has {known.value}",
                found=f"{number.value}",
                needed=f"{known.value}",
                mend="look for a slip in the unit",
                whose=Whose(Layer.PHYSICS, f"half-life of {nuclide.name}", known.citation, nuclide.spot),
            )
