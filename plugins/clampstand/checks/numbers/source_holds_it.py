"""What is cited for a number holds figures of that kind, and what is cited for a sight tells what is seen.

Why: one name further down the list is as good a name. Whoever looks a half-life up in a table of densities
finds nothing, and no longer believes the rest of the page.

Wrong:
    citations: {figures: {holds: [time, energy]}}
    high tension bench:
      numbers: {gap: {value: 3 mm, source: figures}}

Right:
    citations: {figures: {holds: [time, length]}}
    high tension bench:
      numbers: {gap: {value: 3 mm, source: figures}}

Whose: this handbook: whoever cites lets others find it.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Route, Severity, Whose

ID = "source-holds-it"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a source is cited for what stands in it")
SEEN = "observation"


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every citation of a declared number and of an expectation, against what its source says it holds."""
    practical = lesson.practical
    for name, number in practical.numbers.items():
        if number.source is not None:
            yield from _not_held(lesson, number.source, number.value.kind, name, ("numbers", name, "source"))
    for index, entry in enumerate(practical.expect):
        if entry.source is not None:
            said = entry.see or entry.show or entry.source
            yield from _not_held(lesson, entry.source, SEEN, said, ("expect", index, "source"))


def _not_held(lesson: Lesson, source: str, kind: str, what: str, route: Route) -> Iterator[Problem]:
    citation = lesson.book.citations.get(source)
    if citation is None or kind in citation.holds:
        return  # a name that is nowhere is told elsewhere
    yield Problem(
        lesson.practical.at(*route),
        f"{source} is cited for {what}, and does not say that it holds any {kind}",
        found=f"holds: {', '.join(citation.holds) or 'nothing'}",
        needed=kind,
        mend=f"cite the source it was read in; if that is {source}, write {kind} under its holds",
        whose=RULE,
        related=((citation.spot, "the source"),),
    )
