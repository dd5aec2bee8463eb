"""A text of a practical as somebody says it."""

import re

from clampstand.checks.rule import Lesson
from clampstand.model.practical import STOP_WORD

_QUOTED = re.compile(r"\{(?:free:)?\s*([^{}]*)\}")


def spoken(lesson: Lesson, text: str) -> str:
    """A text as a person says it: names and numbers in the place of what quotes them."""
    kit, numbers, rooms = lesson.book.kit, lesson.practical.numbers, lesson.book.rooms

    def said(quote: re.Match[str]) -> str:
        name = quote[1].strip()
        if name in numbers:
            return str(numbers[name].value)
        if name == STOP_WORD:
            return lesson.practical.stop_word or name
        return kit[name].name if name in kit else rooms[name].name if name in rooms else name

    return _QUOTED.sub(said, text)
