"""What to do when it goes wrong: shared procedures with their own short card."""

from typing import ClassVar

from clampstand.model.base import Definition, Entry, Id, Line, Many, Time, Words
from clampstand.model.step import ActorName


class Action(Definition):
    """One action of an emergency procedure."""

    do: Words
    by: Many[ActorName] = ()
    needs: Many[Id] = ()
    """Items it takes: each must be in the practical's kit or in its rooms."""
    lasts: Time | None = None


class Emergency(Entry):
    """A shared emergency procedure. The trigger comes first, the telephone last."""

    shelf: ClassVar[str] = "emergencies"

    title: Line
    when: Line
    """What is seen that starts it."""
    say: Line | None = None
    do: tuple[Action, ...]
    ring: Many[Id]
    """Contacts of the department, in order."""
    afterwards: Words | None = None
    sign: Id
    search: Many[Line] = ()
    sources_read: Many[Id] = ()
    defer: Words | None = None
