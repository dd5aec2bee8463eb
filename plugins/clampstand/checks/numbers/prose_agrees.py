"""A quantity in a sentence is a declared number, or is marked as free.

Why: people obey the last thing they read. If a sentence says one distance and the data another, one of them
will hurt somebody, and nobody can check a number that is written in two places. Numbers in words count too.

Wrong:
    source bench:
      run:
        3: {do: Take the source out and stay 1 m back.}

Right:
    source bench:
      run:
        3: {do: "Take the source out and stay 2 m back, for {free: 30 s} or so."}

Whose: this handbook.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sentences import Sentence
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.units import Amount, amounts_in, amounts_in_words, is_same

ID = "prose-agrees"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "every number is written once and quoted by name")
_QUOTED = re.compile(r"\{[^{}]*\}")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every quantity in every sentence, except quoted names and those marked free."""
    declared = [number.value for number in lesson.practical.numbers.values()]
    for sentence in lesson.sentences:
        times = [sentence.step.takes] if sentence.step else []
        if sentence.step and sentence.step.waits:
            times.append(sentence.step.waits)
        for amount in _written_out(sentence.text):
            if not any(_agrees(amount, known) for known in (*declared, *times)):
                yield _problem(lesson, sentence, amount)


def _written_out(text: str) -> list[Amount]:
    bare = _QUOTED.sub(lambda quote: " " * len(quote.group()), text)
    return [amount for _, amount in (*amounts_in(bare), *amounts_in_words(bare))]


def _agrees(amount: Amount, known: Amount) -> bool:
    """Whether an amount is a declared one, or one end of a declared range."""
    if amount.kind != known.kind:
        return False
    ends_agree = is_same(amount.low, known.low) and is_same(amount.high, known.high)
    is_an_end = amount.is_single and (is_same(amount.low, known.low) or is_same(amount.low, known.high))
    return ends_agree or is_an_end


def _problem(lesson: Lesson, sentence: Sentence, amount: Amount) -> Problem:
    rivals = [
        (name, number)
        for name, number in lesson.practical.numbers.items()
        if number.value.kind == amount.kind and number.obeys
    ]
    related = tuple(
        (lesson.practical.at("numbers", name, "value"), f"{name} is declared here") for name, _ in rivals
    )
    return Problem(
        lesson.practical.at(*sentence.route),
        f"the sentence says {amount.written}, which is no declared number",
        found=amount.written,
        needed=" or ".join(f"{{{name}}} ({number.value})" for name, number in rivals) or "a declared number",
        mend=f"quote a number by name in braces, or write {{free: {amount.written}}} if it limits nothing",
        whose=RULE,
        related=related,
    )
