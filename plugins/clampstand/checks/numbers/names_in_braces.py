"""Kit, rooms and sources are named in braces wherever a sentence says what to do.

Why: what stands in braces is known to be in the kit, and is printed under one name everywhere. What does not
may be missing from the trolley, or be another thing with nearly the same name.

Wrong:
    source bench:
      run:
        5: {do: Turn the source stand round.}

Right:
    source bench:
      run:
        5: {do: "Turn the {source-stand} round."}

Whose: this handbook.
"""

from collections.abc import Iterator

from clampstand.checks.names import Names
from clampstand.checks.rule import Lesson
from clampstand.findings import Layer, Problem, Severity, Whose

ID = "names-in-braces"
SEVERITY = Severity.STOP
RULE = Whose(Layer.HANDBOOK, "what a sentence names is named by its id, in braces")


def check(lesson: Lesson) -> Iterator[Problem]:
    """Every sentence that says what to do, against the names of what is laid out, whole or with a slip."""
    names = Names(lesson)
    for sentence, name, its_id in names.unbound():
        yield Problem(
            lesson.practical.at(*sentence.route),
            f"the sentence names {name} without braces",
            found=name,
            needed=f"{{{its_id}}}",
            mend=f"write {{{its_id}}} instead of {name}",
            whose=RULE,
        )
    for sentence, run, name in names.misspelt():
        its_id = names.known[name]
        yield Problem(
            lesson.practical.at(*sentence.route),
            f"{run} is nothing that is laid out; did you mean {name}?",
            found=run,
            needed=f"{{{its_id}}}",
            mend=f"write {{{its_id}}} instead of {run}",
            whose=RULE,
        )
