"""How a list of steps is set: who need not be named beside each, and in what size of type."""

from collections import Counter
from collections.abc import Sequence

from clampstand.model.step import Step

MOST_BETWEEN_PAUSES = 9
"""Steps from one pause to the next: a list for checking has fewer than ten items, as surgeons' lists do."""
_FITS = {16: 1400, 14: 1800}
"""Characters of steps and warnings that fit on a side, by the size of type in points; more are set in 12."""
_ABOUT_A_STEP = 12
"""Characters' worth of room that a step's box, clock and rule take."""


def usual_doer(steps: Sequence[Step]) -> str:
    """The one who does most of the steps alone; empty where nobody does any alone."""
    alone = Counter(step.by[0] for step in steps if len(step.by) == 1)
    return max(alone, key=lambda name: (alone[name], name)) if alone else ""


def pauses(steps: Sequence[Step]) -> frozenset[int]:
    """The numbers of the steps after which to pause and look whether all is ticked: few, at natural places.

    Where no place is natural it is parted all the same, but at rest if that can be helped.
    """
    free = _at_rest(steps)
    natural = [at for at in range(1, len(steps)) if _is_natural(steps[at - 1], steps[at])]
    found: set[int] = set()
    last = 0
    while len(steps) - last > MOST_BETWEEN_PAUSES:
        window = set(range(last + 1, last + MOST_BETWEEN_PAUSES + 1))
        last = max(
            window.intersection(natural, free) or window & free or window.intersection(natural) or window
        )
        found.add(last)
    return frozenset(found)


def _at_rest(steps: Sequence[Step]) -> set[int]:
    """The numbers of the steps but the last after which no source is in hand and nothing live or charged."""
    ever = {supply for step in steps for supply in step.discharges}
    held, charged, found = False, set[str](), set[int]()
    for number, step in enumerate(steps[:-1], start=1):
        held = (held or bool(step.takes_out or step.picks_up)) and not (step.sets_down or step.puts_back)
        charged = (charged - (set(step.switches_off) - ever) - set(step.discharges)) | step.switches_on.keys()
        if not held and not charged:
            found.add(number)
    return found


def _is_natural(step: Step, following: Step) -> bool:
    """Whether something ends here: a wait, a danger, one person's part; or a warning comes next."""
    ended = step.unattended or step.counts_back or step.discharges or step.class_
    return bool(ended or following.warn) or set(step.by) != set(following.by)


def points(steps: Sequence[Step]) -> int:
    """The type the steps are few enough for: 16 pt for arm's length, 14 or 12 as clear print asks."""
    warned = (step.warn for step in steps if step.warn is not None)
    words = [step.do for step in steps] + [warn.hazard + warn.avoid for warn in warned]
    room = sum(map(len, words)) + _ABOUT_A_STEP * len(steps)
    return next((size for size, fits in _FITS.items() if room <= fits), 12)
