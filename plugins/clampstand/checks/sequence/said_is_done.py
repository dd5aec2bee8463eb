"""What a sentence names to wear, to stand between or to burn is in the step's data too.

Why: people do what the sentence says, and the rules judge what the data say. A sentence about gloves or about
an open bottle whose data are silent has not been checked.

Wrong:
    cold bench:
      run:
        9: {do: "Refill the dishes with {thin-spirit}."}

Right:
    cold bench:
      run:
        9: {do: Refill the dishes with water.}

Whose: this handbook: what is only said cannot be checked.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.sentences import quoted_in
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.kit import Item
from clampstand.model.step import Step
from clampstand.timeline import Moment

ID = "said-is-done"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step's data say what its sentence says")
_STILL_WORN = re.compile(r"\bkeep\b[^.;{}]*\{([^{}\n]{1,300})\}s? on\b", re.IGNORECASE)
_OF_ITEMS = (
    *("handles", "opens", "closes", "brings_in", "takes_away", "touches", "puts_up", "takes_down"),
    *("lights", "puts_out", "switches_on", "switches_off", "discharges"),
)


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every item in the sentence of every step, against the step's other words."""
    for moment in lesson.moments:
        named = _named(moment.step) | set(_STILL_WORN.findall(moment.step.do))
        for name in dict.fromkeys(quoted_in(moment.step.do)):
            item = lesson.book.kit.get(name)
            words = () if item is None or name in named else _words_for(lesson, item, moment)
            if words:
                yield Problem(
                    lesson.spot(moment.ref, "do"),
                    f"{moment.ref} names {name} and its data do not say what is done with it",
                    found=f"{{{name}}} in the sentence only",
                    needed=f"one of {', '.join(words)}",
                    mend=f"write what happens to {name}, or take it out of the sentence",
                    whose=RULE,
                )


def _words_for(lesson: Lesson, item: Item, moment: Moment) -> tuple[str, ...]:
    """The words of which one must say what is done with an item; none for what does not matter."""
    if item.worn is not None:
        return "puts_on", "takes_off"
    if item.stops:
        return "puts_up", "takes_down"
    hazards = [lesson.book.hazards[name] for name in item.hazards if name in lesson.book.hazards]
    asks = moment.ref.phase == "run" and any(hazard.asks_when_met for hazard in hazards)
    return ("handles", "opens", "takes_away") if asks or item.flammable_vapour or item.turns_to_gas else ()


def _named(step: Step) -> frozenset[str]:
    dressed = (name for worn in (step.puts_on, step.takes_off) for items in worn.values() for name in items)
    return frozenset((*dressed, *(name for word in _OF_ITEMS for name in getattr(step, word))))
