"""A number read in the source of a limit is the limit's value, where that limit is of its kind.

Why: a page that quotes a law beside its own rules is believed in both. If it says ten times as much as the
pack in which the law's value stands, one of the two was copied wrongly.

Wrong:
    citations: {land-law: {holds: energy}}
    limits: {electrical.touch-energy: {layer: law, waivable: no, at_most: 350 mJ, citation: land-law}}
    high tension bench:
      numbers: {what the law allows: {value: 35 mJ, source: land-law}}

Right:
    citations: {land-law: {holds: energy}}
    limits: {electrical.touch-energy: {layer: law, waivable: no, at_most: 350 mJ, citation: land-law}}
    high tension bench:
      numbers: {what the law allows: {value: 0.35 J, source: land-law}}

Whose: this handbook: a limit's value stands in its pack, and is quoted.
"""

from collections.abc import Iterator

from clampstand.checks.holding import limits_read_in
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import is_same

ID = "as-the-limit-says"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what is quoted from the source of a limit is the limit")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every single number from a law or a standard, without a range, against the limits read there."""
    practical = lesson.practical
    for name, number in practical.numbers.items():
        says = (number.obeys, number.may_be, number.lies_in, number.half_life_of, number.fades_with)
        if number.source is None or any(says) or not number.value.is_single:
            continue
        limits = limits_read_in(number.source, number.value.kind, lesson.book)
        if limits and not any(is_same(number.value.low, bound.value) for _, bound in limits):
            yield Problem(
                practical.at("numbers", name, "value"),
                f"{name} is {number.value} from {number.source}, and the limits read there are others",
                found=str(number.value),
                needed=" or ".join(dict.fromkeys(str(bound) for _, bound in limits)),
                mend="look for a slip; a figure that is no limit says lies_in: where it can lie",
                whose=RULE,
                related=tuple((limit.spot, limit.title) for limit, _ in limits[:3]),
            )
