"""What a sentence does to a source, a supply, a flame, a glove or a material, the step's data do too.

Why: people do what the sentence says; the rules judge what the data say. A source lifted out in a sentence
only is still in its box for every rule, and a supply switched on in a sentence only is dead.

Wrong:
    source bench:
      run:
        5: {do: "Lift {source} out of the castle."}

Right:
    source bench:
      run:
        5: {do: "Count while {source} is out of the castle."}

Whose: this handbook: what is only said cannot be checked.
"""

from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.things import Things
from clampstand.checks.verbs import Deed, Verb, deeds
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.timeline import Moment

ID = "verb-has-its-word"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a step's data do what its sentence does")
GRAVE = frozenset({"takes_out", "puts_back", "signs_out", "counts_back", "switches_on", "switches_off"})
"""Words without which no rule knows where a source is, or what is live."""
BEGINS = frozenset({"takes_out", "picks_up", "switches_on", "lights"})
"""Words with which a danger begins: also what is done only perhaps must be in the data. To end one if
something happens is what a careful sentence adds."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every thing that every step's sentence does something to."""
    things = Things(lesson)
    for moment in lesson.moments:
        met: set[tuple[str, str]] = set()
        for deed in deeds(moment.step.do):
            for verb in deed.meanings(things.kinds_of(deed.thing, moment)):
                word = verb.words[0]
                careful = deed.perhaps and word not in BEGINS
                if careful or met & {(deed.thing, word), (deed.thing, deed.verb)}:
                    continue
                if _says(moment, verb, deed):
                    continue
                met |= {(deed.thing, word), (deed.thing, deed.verb)}
                yield _problem(lesson, moment, deed, verb)


def _says(moment: Moment, verb: Verb, deed: Deed) -> bool:
    """Whether the step has one of the verb's words: about the thing, where the rules ask which it is."""
    which = verb.of == "material" and deed.straight
    for word in verb.words:
        value = getattr(moment.step, word)
        if value and (deed.thing in value or not (which or word in GRAVE)):
            return True
    return False


def _problem(lesson: Lesson, moment: Moment, deed: Deed, verb: Verb) -> Problem:
    words, grave = verb.words, verb.words[0] in GRAVE and not (deed.perhaps or deed.passive)
    said = f"{deed.verb} {deed.particle}" if verb.particles else deed.verb
    return Problem(
        lesson.spot(moment.ref, "do"),
        f"{moment.ref} says to {said} {deed.thing}, and its data do not",
        found=f"{{{deed.thing}}} in the sentence, no {' and no '.join(words)}",
        needed=f"{words[0]}: {deed.thing}",
        mend=f"write {words[0]}, or say it otherwise if it is not done here",
        whose=RULE,
        severity=None if grave else Severity.WARNING,
    )
