"""No sentence calls law what is only the department's own rule.

Why: somebody who finds out that the law says no such thing believes the next sentence less, and the next one
may be the law.

Wrong:
    source bench:
      brief: "By law you stay {hand distance} away."

Right:
    source bench:
      brief: "By our own rule you stay {hand distance} away."

Whose: this handbook: law, guidance and local rule are different things and look different.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.limits import whose
from clampstand.model.book import Book
from clampstand.model.limit import Limit
from clampstand.units import amounts_in, is_same

ID = "local-called-law"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "only law is called law")
LAW = re.compile(
    r"\b(?:law(?<!square law)(?<!['’]s law)s?|lawful|unlawful|legal|legally|illegal|illegally|"
    r"statute|statutory|offence|crime|regulations?)\b(?! of )",
    re.IGNORECASE,
)
"""Words that claim law; not the inverse-square law, nor Ohm's law."""
_DIGIT = re.compile("[0-9]")
_END = re.compile(r"(?<=[.!?;])\s+")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every sentence that claims law and says a number whose strictest limit is a local rule."""
    names = [f"{{{name}}}" for name, number in lesson.practical.numbers.items() if number.obeys]
    for sentence in lesson.sentences:
        says_a_number = _DIGIT.search(sentence.text) or any(name in sentence.text for name in names)
        for part in _END.split(sentence.text) if says_a_number and LAW.search(sentence.text) else ():
            claim = LAW.search(part)
            for name, limit in _local(lesson, part) if claim else ():
                yield Problem(
                    lesson.practical.at(*sentence.route),
                    f"the sentence calls {name} {claim.group() if claim else ''}, and it is a local rule",
                    found=part,
                    needed=f"{limit.title}: {limit.layer}",
                    mend="say our own rule, or leave out who says so",
                    whose=whose(limit),
                )


def check_book(book: Book) -> Iterator[Problem]:
    """The titles of the department's own limits."""
    for limit in book.limits_in_force:
        claim = LAW.search(limit.title) if limit.layer == "local rule" else None
        if claim:
            yield Problem(
                limit.at("title"),
                f"the title of a local rule says {claim.group()}",
                found=limit.title,
                needed="a title that says what is limited, and not by whom",
                mend="leave the word out, or write the layer that it really is",
                whose=RULE,
            )


def _local(lesson: Lesson, part: str) -> Iterator[tuple[str, Limit]]:
    """The declared numbers a sentence says, by name or written out, whose limit is a local rule."""
    written = [amount for _, amount in amounts_in(part)]
    for name, number in lesson.practical.numbers.items():
        limit = lesson.limit(number.obeys) if number.obeys else None
        says = f"{{{name}}}" in part or any(is_same(w.value, number.value.value) for w in written)
        if limit is not None and limit.layer == "local rule" and says:
            yield name, limit
