"""A sentence that washes hands, a bench or a tray has its word in the data.

Why: what rubs off is counted as washed off only where the data say so. A bench that is wiped in a sentence
only stays unclean for every rule.

Wrong:
    source bench:
      run:
        7: {do: Wash your hands., washes: (left out)}

Right:
    source bench:
      run:
        7: {do: Wash your hands.}

Whose: this handbook: what is only said cannot be checked.
"""

import re
from collections.abc import Iterator

from clampstand.checks.prose import spoken
from clampstand.checks.rule import Lesson
from clampstand.checks.verbs import PREPOSITIONS
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "washing-has-its-word"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step's data wash what its sentence washes")
_WASHED = {
    "hands": re.compile(r"\bhands?\b", re.IGNORECASE),
    "bench": re.compile(r"\bbench(?:es)?\b", re.IGNORECASE),
    "tray": re.compile(r"\btrays?\b", re.IGNORECASE),
}
_VERB = "(?:wash|wipe|clean|disinfect|soak|scrub)"
_WASHES = re.compile(
    rf"(?:(?:^|[.;:,]\s+|\b(?:and|then|(?<!\bnot )(?<!\bnever )to|everybody|everyone)\s+){_VERB}(?:e?s|ing)?"
    rf"|(?<!nobody )(?<!who ){_VERB}e?s)\b([^.;:]*)",
    re.IGNORECASE,
)
"""As an order, or as what somebody does: a clean bench, soap for washing and a wash bottle wash nothing."""
_NO_OBJECT = re.compile(rf"\b(?:{'|'.join(sorted(PREPOSITIONS))})\b.*", re.IGNORECASE | re.DOTALL)


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step whose sentence washes something."""
    for moment in lesson.moments:
        step = moment.step
        said = _washed_by(spoken(lesson, step.do)) if _WASHES.search(step.do) else set()
        for thing in sorted(said - set(step.washes)):
            yield Problem(
                lesson.spot(moment.ref, "do"),
                f"{moment.ref} washes the {thing} in its sentence only",
                found=f"washes: {', '.join(step.washes) or 'nothing'}",
                needed=f"washes: {thing}",
                mend=f"write washes: {thing}",
                whose=RULE,
            )


def _washed_by(sentence: str) -> set[str]:
    """What a sentence washes: what follows the verb, up to the first preposition."""
    objects = " ".join(_NO_OBJECT.sub("", match[1]) for match in _WASHES.finditer(sentence))
    return {thing for thing, pattern in _WASHED.items() if pattern.search(objects)}
