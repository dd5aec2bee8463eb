"""The brief is short enough to be said and heard.

Why: a class listens for about a minute. What comes after that is not heard, and it is what comes last that
matters most.

Wrong:
    limits:
      planning.brief-words: {at_most_count: 10}

Right:
    limits:
      planning.brief-words: {at_most_count: 11}

Whose: the department's own rule.
"""

from collections.abc import Iterator

from clampstand.checks.prose import spoken
from clampstand.checks.rule import Lesson
from clampstand.findings import Problem, Severity
from clampstand.limits import keeps, whose

ID = "brief-length"
SEVERITY = Severity.WARNING
LIMIT = "planning.brief-words"


def check(lesson: Lesson) -> Iterator[Problem]:
    """The words of the brief as it is said, names and numbers in their place."""
    limit = lesson.limit(LIMIT)
    words = len(spoken(lesson, lesson.practical.brief or "").split())
    if limit is not None and isinstance(limit.value, int) and not keeps(words, limit):
        yield Problem(
            lesson.practical.at("brief"),
            f"the brief has {words} words",
            found=f"{words} words",
            needed=limit.in_words,
            mend="say only what somebody must not do, and what happens if",
            whose=whose(limit),
        )
