"""What the parts of a page and a card are called: with a class there, and with nobody there but staff."""

from collections.abc import Mapping
from dataclasses import dataclass

from clampstand.model.practical import Phase, Practical


@dataclass(frozen=True, slots=True)
class Titles:
    """The words of the headings that differ.

    Args:
        phases: what each phase is called.
        work: what the run is called within a sentence.
        say: over what is said before it begins.
        ask: over the questions.
        believed: over what people get wrong.
        kit: over what to fetch, on the card.
        after: over the steps that clear up, on the card.
        in_all: over the totals of the kit list.
        share: after how many there are for everybody together.
    """

    phases: Mapping[Phase, str]
    work: str
    say: str
    ask: str
    believed: str
    kit: str
    after: str
    in_all: str
    share: str


_WITH_A_CLASS = Titles(
    {
        "prepare": "Before the lesson",
        "set_up": "Setting up",
        "run": "In the lesson",
        "clear_up": "Clearing up",
    },
    work="the lesson",
    say="Say to the class",
    ask="Ask the class",
    believed="What pupils say, and what is so",
    kit="Kit for the class",
    after="After the lesson",
    in_all="For the class",
    share="for the class",
)
_STAFF_ALONE = Titles(
    {"prepare": "Before the work", "set_up": "Setting up", "run": "The work", "clear_up": "Clearing up"},
    work="the work",
    say="Say first",
    ask="Ask each other",
    believed="What people say, and what is so",
    kit="Kit",
    after="After the work",
    in_all="In all",
    share="in all",
)


def has_class(practical: Practical) -> bool:
    """Whether pupils are there at all."""
    return practical.pupils != "not there"


def titles_of(practical: Practical) -> Titles:
    """What the parts of a practical are called."""
    return _WITH_A_CLASS if has_class(practical) else _STAFF_ALONE
