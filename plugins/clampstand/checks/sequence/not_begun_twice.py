"""What begins has not begun already: nothing is lit twice, switched on twice or put on twice.

Why: when a beginning comes twice, the step that ended it in between is missing. Whoever follows the card then
believes that it is off, shut or taken off.

Wrong:
    cold bench:
      run:
        9: {lights: taper}
        10: {lights: taper, puts_out: taper}

Right:
    cold bench:
      run:
        9: {lights: taper, puts_out: taper}
        10: {lights: taper, puts_out: taper}

Whose: this handbook: the steps say what is on, lit, worn or open at any moment.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import ACTORS
from clampstand.timeline import Moment, Power

ID = "not-begun-twice"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "the steps say what is on, lit, worn or open at any moment")


@dataclass(frozen=True, slots=True)
class Again:
    """Something that begins though it has begun: by which word, what, how it is, and what would end it."""

    word: str
    name: str
    state: str
    missing: str


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every beginning of every step, against what goes on before it."""
    shut = {item for moment in lesson.moments for item in moment.step.closes}
    opened: set[str] = set()
    number: dict[str, str] = {}
    for moment in lesson.moments:
        step = moment.step
        again = [Again("opens", item, "is open", "closes") for item in step.opens if item in opened]
        again += [
            Again("switches_on", item, f"is on at {voltage}", "switches_off")
            for item, voltage in step.switches_on.items()
            if moment.handled.supply(item).power is Power.ON and number.get(item) == voltage
        ]
        for each in (*again, *_lit_or_up(moment), *_dressed(moment)):
            yield _problem(lesson, moment, each)
        # Of what is never shut, such as a bottle, each opening is one more portion.
        opened = (opened | (set(step.opens) & shut)) - {*step.closes, *step.takes_away}
        number |= step.switches_on


def _lit_or_up(moment: Moment) -> Iterator[Again]:
    for item in moment.step.lights:
        if item in moment.before.lit:
            yield Again("lights", item, f"is lit since {moment.before.lit[item]}", "puts_out")
    for item in moment.step.puts_up:
        if item in moment.before.barriers:
            yield Again("puts_up", item, f"is up since {moment.before.barriers[item]}", "takes_down")


def _dressed(moment: Moment) -> Iterator[Again]:
    """What is put on though everybody named wears it."""
    for who, items in moment.step.puts_on.items():
        for item in items:
            if all(item in moment.before.wears(person) for person in ACTORS[who]):
                yield Again("puts_on", item, f"is worn by the {who} already", "takes_off")


def _problem(lesson: Lesson, moment: Moment, again: Again) -> Problem:
    word, missing = again.word.replace("_", " "), again.missing.replace("_", " ")
    return Problem(
        lesson.spot(moment.ref, again.word),
        f"{moment.ref} {word} {again.name}, which {again.state}",
        found=f"{again.name} {again.state}",
        needed=f"a step before it that {missing} {again.name}",
        mend=f"write the step that {missing} it, or take {again.word} out",
        whose=RULE,
    )
