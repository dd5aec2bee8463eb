"""The moments at which nothing that can hurt may be left about: nobody comes back to it, or not soon."""

from collections.abc import Iterator
from dataclasses import dataclass

from clampstand.checks.rule import Lesson
from clampstand.timeline import Moment


@dataclass(frozen=True, slots=True)
class Ending:
    """A step after which people go, and how to say so."""

    moment: Moment
    words: str
    class_leaves: bool


def endings(lesson: Lesson) -> Iterator[Ending]:
    """The last step of preparing, every step in which the class goes, then the last step of all.

    Hours or days lie between preparing and the lesson.
    """
    last = None
    for moment in lesson.moments:
        if last is not None and last.moment.ref.phase == "prepare" and moment.ref.phase != "prepare":
            yield Ending(last.moment, f"{last.moment.ref} is the last of it", class_leaves=False)
        last = Ending(moment, f"{moment.ref} is the last", class_leaves=False)
        if moment.during.class_here and _the_class_goes(lesson, moment):
            yield Ending(moment, f"the class leaves in {moment.ref}", class_leaves=True)
            last = None
    if last is not None:
        yield last


def _the_class_goes(lesson: Lesson, moment: Moment) -> bool:
    """Whether the class goes in this step: by its own words, or because the run ends."""
    ends = moment.ref.phase == "run" and moment.ref.number == len(lesson.practical.run)
    return moment.step.class_ == "leaves" or ends
