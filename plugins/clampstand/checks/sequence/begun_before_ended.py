"""What is ended has begun: nothing is switched off, put out or taken off that is not on, lit or worn.

Why: when an ending has no beginning, the step that began it is missing. Everything the rules know about what
is on, lit, worn or in the room is then wrong, and so is the card.

Wrong:
    cold bench:
      run:
        4: {puts_out: taper}

Right:
    cold bench:
      run:
        4: {lights: taper, puts_out: taper}

Whose: this handbook: the steps say what is on, lit, worn or open at any moment.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from clampstand.checks.meeting import with_what_goes_on
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import ACTORS
from clampstand.timeline import Moment, Power, StepRef

ID = "begun-before-ended"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "the steps say what is on, lit, worn or open at any moment")


@dataclass(frozen=True, slots=True)
class Fault:
    """A word of a step that does not fit: of what, how that is, and the word of the step that is missing."""

    word: str
    name: str
    state: str
    missing: str


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every ending of every step, and everything handled, against what goes on by then."""
    comes = {item for moment in lesson.moments for item in moment.step.brings_in}
    for moment, going_on in with_what_goes_on(lesson):
        faults = (
            *_ended(moment, going_on),
            *_undressed(moment),
            *_early(moment, comes),
        )
        for fault in faults:
            word, missing = fault.word.replace("_", " "), fault.missing.replace("_", " ")
            yield Problem(
                lesson.spot(moment.ref, fault.word),
                f"{moment.ref} {word} {fault.name}, which {fault.state}",
                found=f"{fault.name} {fault.state}",
                needed=f"a step before it that {missing} {fault.name}",
                mend=f"write the step that {missing} it, or take {fault.word} out",
                whose=RULE,
            )


def _ended(moment: Moment, going_on: Mapping[str, StepRef]) -> Iterator[Fault]:
    """What the step ends although it has not begun."""
    step, during = moment.step, moment.during
    about = {**during.present, **during.vapours}
    for item in step.switches_off:
        if moment.before.supply(item).power is not Power.ON:
            yield Fault("switches_off", item, "is not on", "switches_on")
    for item in step.discharges:
        if moment.handled.supply(item).power is Power.OFF:
            yield Fault("discharges", item, "has never been on", "switches_on")
    states = (
        ("puts_out", during.lit, "is not lit", "lights"),
        ("takes_down", during.barriers, "is not up", "puts_up"),
        ("closes", going_on, "is not open", "opens"),
        ("takes_away", about, "has not been brought in", "brings_in"),
    )
    for word, state, words, missing in states:
        yield from (Fault(word, item, words, missing) for item in getattr(step, word) if item not in state)


def _undressed(moment: Moment) -> Iterator[Fault]:
    """What is taken off though nobody of those named wears it."""
    for who, items in moment.step.takes_off.items():
        for item in items:
            if not any(item in moment.during.wears(person) for person in ACTORS[who]):
                yield Fault("takes_off", item, f"is not worn by the {who}", "puts_on")


def _early(moment: Moment, comes: set[str]) -> Iterator[Fault]:
    """What is handled, although a step brings it in and has not yet."""
    about = {**moment.during.present, **moment.during.vapours}
    for item in moment.step.handles:
        if item in comes and item not in about:
            yield Fault("handles", item, "is not in the room", "brings_in")
