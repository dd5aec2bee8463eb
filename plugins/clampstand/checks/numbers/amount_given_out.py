"""An amount of the kit list is one that is usually given out of that item, or the line says its own range.

Why: five litres of an indicator instead of five millilitres are ordered, or made up, before anybody wonders.
How much of a thing is given out is a property of the thing, and stands with it once.

Wrong:
    kit: {thin-spirit: {given_out: 2 mL to 20 mL}}
    cold bench:
      kit: {2: {amount: 50 mL}}

Right:
    kit: {thin-spirit: {given_out: 2 mL to 20 mL}}
    cold bench:
      kit: {2: {amount: 50 mL, may_be: 40 mL to 60 mL}}

Whose: the department's own, from common practice.
"""

from collections.abc import Iterator

from clampstand.checks.ranges import lies_in
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "amount-given-out"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.LOCAL, "things are given out in the amounts they are used in")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every amount for each, against what its item says; one with a range of its own is held by that."""
    practical, kit = lesson.practical, lesson.book.kit
    for index, line in enumerate(practical.kit):
        item = kit.get(line.item)
        if line.amount is None or line.may_be is not None or item is None or item.given_out is None:
            continue
        if not lies_in(line.amount, item.given_out):
            yield Problem(
                practical.at("kit", index, "amount"),
                f"{line.amount} of {line.item} is not what is usually given out of it",
                found=str(line.amount),
                needed=str(item.given_out),
                mend="look for a slip in the amount; if it is meant, write may_be: on the line",
                whose=RULE,
                related=((item.at("given_out"), "how much is given out"),),
            )
