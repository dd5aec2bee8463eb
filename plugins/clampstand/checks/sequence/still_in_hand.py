"""A step that goes on with it goes on with what the step before it had in hand, in its data too.

Why: "shake it" or "blot it dry" is about the bottle or the metal of the step before. Where its data name
nothing, no rule asks whether the gloves that were on for the first step are still on for the second.

Wrong:
    cold bench:
      run:
        4: {do: Press it flat.}

Right:
    cold bench:
      run:
        4: {do: Press it flat., by: teacher, handles: cold-snow}

Whose: this handbook: what is only said cannot be checked.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.checks.things import Things
from clampstand.findings import Layer, Problem, Severity, Whose
from clampstand.model.step import Step
from clampstand.timeline import Moment

ID = "still-in-hand"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step's data name what its sentence goes on with")
_GOES_ON = re.compile(
    r"(?:^|[.;,]\s+|\b(?:and|then|to)\s+)(?:blot|crush|cut|drop|fill|lay|lift|pour|press|put|rinse|roll|seal|"
    r"set|shake|spread|stand|stir|swirl|tie|tip|turn|wipe)s? (?:it|them|both)\b",
    re.IGNORECASE,
)
IN_HAND = ("handles", "takes_out", "picks_up", "opens", "lights")
"""Words after which something is in hand."""
SAYS_WHAT = (
    *("handles", "touches", "sets_down", "puts_back", "picks_up", "takes_away", "brings_in"),
    *("opens", "closes", "lights", "puts_out", "switches_on", "switches_off"),
)
"""Words that say what a step is about."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step whose sentence begins something with it, against the step before in its phase."""
    things = Things(lesson)
    before: Moment | None = None
    for moment in lesson.moments:
        if before is not None and before.ref.phase == moment.ref.phase and _goes_on(moment.step):
            held = [name for name in _spoken_of(before.step) if things.matters(name, before)]
            named = {name for word in SAYS_WHAT for name in getattr(moment.step, word)}
            dresses = moment.step.puts_on or moment.step.takes_off
            if held and not dresses and not named & set(_in_hand(before.step)):
                yield Problem(
                    lesson.spot(moment.ref, "do"),
                    f"{moment.ref} goes on with {held[0]}, and its data name {_listed(named)}",
                    found=f"it, which is {' or '.join(held)}",
                    needed=f"handles: {held[0]}",
                    mend="write what is handled, or name in the sentence what it is",
                    whose=RULE,
                    related=((lesson.spot(before.ref), "in hand here"),),
                )
        before = moment


def _listed(named: set[str]) -> str:
    return ", ".join(sorted(named)) or "nothing"


def _goes_on(step: Step) -> bool:
    """Whether its sentence goes on with something it has not named itself."""
    match = _GOES_ON.search(step.do)
    return match is not None and "{" not in step.do[: match.start()]


def _in_hand(step: Step) -> Iterator[str]:
    for word in IN_HAND:
        yield from getattr(step, word)


def _spoken_of(step: Step) -> Iterator[str]:
    """What was in hand and spoken of, by its name or as it."""
    as_it = _GOES_ON.match(step.do)
    yield from (name for name in _in_hand(step) if as_it or f"{{{name}}}" in step.do)
