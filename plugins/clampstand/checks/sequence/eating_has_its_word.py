"""A sentence in which somebody eats or drinks has its word in the data.

Why: whether hands are clean before a snack is judged only where the data say that somebody eats. A break that
stands in a sentence only is none for every rule, and somebody eats with what was handled still on the
fingers.

Wrong:
    cold bench:
      run:
        9: {do: Have a snack.}

Right:
    cold bench:
      run:
        9: {do: Have a snack., eats: yes}

Whose: this handbook: what is only said cannot be checked.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "eating-has-its-word"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "a step's data say that somebody eats where its sentence does")
_EATS = re.compile(
    r"(?:^|[.;:,]\s+|\b(?:(?<!\bfood )and|then|everybody|everyone|pupils)\s+)"
    r"(?:(?:eat|drink|taste|chew|sip)s?\b(?!(?:\s+\w+){0,2}\s+(?:no|nothing|none|neither)\b)"
    r"|(?:have|has|take|takes)\s+(?:\w+\s+){0,2}(?:snack|lunch|drink|biscuit|sandwich)(?:e?s)?\b"
    r"(?!\s+(?:can|bottle|carton|box|tin|bag|packet)))",
    re.IGNORECASE,
)
"""As an order, or as what somebody does: nobody eats, taste nothing, and a can for drink, are no meals."""


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step whose sentence has somebody eat or drink."""
    for moment in lesson.moments:
        said = _EATS.search(moment.step.do)
        if said and not moment.step.eats:
            yield Problem(
                lesson.spot(moment.ref, "do"),
                f"somebody eats or drinks in the sentence of {moment.ref} only",
                found=said[0].strip(" ,.;:"),
                needed="eats: yes",
                mend="write eats: yes, and see that hands are washed before",
                whose=RULE,
            )
