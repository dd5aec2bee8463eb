"""How a list of steps is set: who need not be named beside each, and whether larger type fits."""

from collections import Counter
from collections.abc import Sequence

from clampstand.model.step import Step

_ROOMY = 1800
"""Characters of steps and warnings that still fit on a side in 14 point; more are set in 12."""
_ABOUT_A_STEP = 12
"""Characters' worth of room that a step's box, clock and rule take."""


def usual_doer(steps: Sequence[Step]) -> str:
    """The one who does most of the steps alone; empty where nobody does any alone."""
    alone = Counter(step.by[0] for step in steps if len(step.by) == 1)
    return max(alone, key=lambda name: (alone[name], name)) if alone else ""


def is_roomy(steps: Sequence[Step]) -> bool:
    """Whether the steps are few enough for 14 point, the size guidance on clear print prefers."""
    warned = (step.warn for step in steps if step.warn is not None)
    words = [step.do for step in steps] + [warn.hazard + warn.avoid for warn in warned]
    return sum(map(len, words)) + _ABOUT_A_STEP * len(steps) <= _ROOMY
