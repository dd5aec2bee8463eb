"""A number that people are told, and that nothing else holds, says the range in which it may lie.

Why: a limit, a calculator, a property of the kit or the minutes of a step hold most numbers: a slip stands
out against them. A gap or a volume that only a sentence quotes can be a thousand times too large, and the
page prints it in good order.

Wrong:
    high tension bench:
      numbers: {gap: {value: 3 mm, because: common practice}}
      run:
        1: {do: "Set a gap of {gap} between the {field-plates}."}

Right:
    high tension bench:
      numbers: {gap: {value: 3 mm, may_be: 2 mm to 5 mm, because: common practice}}
      run:
        1: {do: "Set a gap of {gap} between the {field-plates}."}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.holding import held_elsewhere, limits_read_in
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.book import Book
from clampstand.model.step import Number

ID = "range-given"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "something holds every number that people are told")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every declared number that a sentence quotes, unless it says its range or something else holds it."""
    practical = lesson.practical
    bare = {name: number for name, number in practical.numbers.items() if _is_bare(number, lesson.book)}
    if not bare:
        return
    held, told = held_elsewhere(lesson), "\n".join(sentence.text for sentence in lesson.sentences)
    for name, number in bare.items():
        if name not in held and f"{{{name}}}" in told:
            yield Problem(
                practical.at("numbers", name),
                f"{name} is {number.value}, and nothing tells when that would be a slip",
                found="no range",
                needed="may_be: how far off still works; of a figure that was read, lies_in",
                mend="write the range; what is only told, and once, can stand in its sentence as {free: …}",
                whose=RULE,
            )


def _is_bare(number: Number, book: Book) -> bool:
    """Whether a number says nothing that holds it. A range says so itself, and degrees have no prefixes."""
    value = number.value
    says = (number.obeys, number.may_be, number.lies_in, number.half_life_of, number.fades_with)
    if not value.is_single or value.kind == "temperature" or any(says):
        return False
    return number.source is None or not limits_read_in(number.source, value.kind, book)
