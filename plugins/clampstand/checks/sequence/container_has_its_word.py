"""What a sentence puts into a container, the step's data put there too.

Why: a lid that shuts tight bursts over what turns to gas, and a pot holds what must be wiped up after it.
Which container it is can only be judged where the data name it.

Wrong:
    cold bench:
      run:
        3: {puts_in: (left out), do: "Tip the {cold-snow} into the {cold-box}."}

Right:
    cold bench:
      run:
        3: {do: "Tip the {cold-snow} into the {cold-box}."}

Whose: this handbook: what is only said cannot be checked.
"""

import re
from collections.abc import Iterator

from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "container-has-its-word"
SEVERITY = Severity.WARNING
RULE = Whose(Layer.HANDBOOK, "a step's data put things where its sentence puts them")
_INTO = re.compile(r"\b(?:in|into) (?:the |a |an |each |its |every |one )?(?:\w+ )?\{([^{}\n]{1,300})\}")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every step that handles what turns to gas, or what it puts away, and names a container for it."""
    kit = lesson.book.kit
    gases = {name for name in lesson.practical.items if name in kit and kit[name].turns_to_gas}
    for moment in lesson.moments:
        step = moment.step
        if step.puts_in is not None or not gases & {*step.handles, *step.puts_back}:
            continue
        into = [name for name in _INTO.findall(step.do) if name in kit and kit[name].container is not None]
        if into:
            yield Problem(
                lesson.spot(moment.ref, "do"),
                f"{moment.ref} puts something into {into[0]}, and its data do not",
                found=f"in {{{into[0]}}} in the sentence only",
                needed=f"puts_in: {into[0]}",
                mend=f"write puts_in: {into[0]}",
                whose=RULE,
            )
