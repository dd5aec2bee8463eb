"""A sentence that counts, reads or weighs for a time has a result in the data.

Why: a count of so many minutes is made for its result. Where the data hold none, no step can build on it,
and nothing notices when it is left out or comes with the wrong thing under the tube.

Wrong:
    source bench:
      numbers:
        long count: {value: 2 min, because: a count long enough}
      run:
        4: {do: "Count for {long count} once {source} stands."}

Right:
    source bench:
      numbers:
        long count: {value: 2 min, because: a count long enough}
      run:
        4: {do: "Wait for {long count} once {source} stands."}

Whose: this handbook: what is only said cannot be checked.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "measuring-has-its-word"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step's data measure what its sentence measures")
_MEASURES = re.compile(
    r"(?:^|[.;]\s+|\b(?:and|then)\s+)(?:count|read|weigh|record)s?\b(?! (?:back|aloud|out)\b)"
    r"[^.;]*?\b(?:for|every)\s+\{([^{}\n]{1,300})\}",
    re.IGNORECASE,
)


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that measures for a time, or every so often, by its sentence."""
    numbers = lesson.practical.numbers
    for moment in lesson.moments:
        if moment.step.measures:
            continue
        match = _MEASURES.search(moment.step.do)
        if match and match[1] in numbers and numbers[match[1]].value.kind == "time":
            yield Problem(
                lesson.spot(moment.ref, "do"),
                f"{moment.ref} measures for {match[1]}, and its data hold no result",
                found="no measures",
                needed="measures: the name of the result",
                mend="write measures, or say it otherwise if nothing is measured",
                whose=RULE,
            )
