"""Whatever is on the kit list is named in a sentence or a step, or its line says what it is for.

Why: a thing that nobody uses is fetched, counted and carried back for nothing. More often another thing was
meant, which then stands in no list and is missing on the day.

Wrong:
    cold bench:
      kit:
        10: {item: small-lamp, per: class}

Right:
    cold bench:
      kit:
        10: {item: small-lamp, per: class, note: should the ceiling light be too bright}

Whose: common practice in preparation rooms.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sentences import quoted_in
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import Step

ID = "kit-is-used"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "what is put out is used")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every line of the kit list without a note, against all sentences and all that steps and parts name.

    Where the sentences of the steps name no kit at all, they do not tell what is used.
    """
    practical = lesson.practical
    in_steps = {name for moment in lesson.moments for name in quoted_in(moment.step.do)}
    if not in_steps & practical.items:
        return
    bare = [(index, line.item) for index, line in enumerate(practical.kit) if line.note is None]
    told = {name for sentence in lesson.sentences for name in quoted_in(sentence.text)}
    unnamed = [(index, item) for index, item in bare if item not in told]
    used = frozenset(_used(lesson)) if unnamed else frozenset()
    for index, item in unnamed:
        if item not in used:
            yield Problem(
                practical.at("kit", index, "item"),
                f"{item} is on the kit list, and no sentence and no step names it",
                found=item,
                needed="something that is used, or a note that says what it is for",
                mend="look whether another item was meant; or write a note on the line",
                whose=RULE,
            )


def _used(lesson: Lesson) -> Iterator[str]:
    """Every item that a step, a circuit, a release, the waste or a worked number names."""
    practical = lesson.practical
    for moment in lesson.moments:
        yield from _by(moment.step)
    for circuit in practical.circuits:
        yield from (circuit.supply, *circuit.feeds)
    yield from (release.item for release in practical.releases)
    yield from (waste.what for waste in practical.waste)
    yield from (name for entry in practical.expect for name in entry.names_given)


def _by(step: Step) -> Iterator[str]:
    for value in step.__dict__.values():
        if isinstance(value, tuple):
            yield from (part for part in value if isinstance(part, str))
        elif isinstance(value, dict):
            yield from value
            yield from (name for names in value.values() if isinstance(names, tuple) for name in names)
        elif isinstance(value, str):
            yield value
