"""People by their codes: what each may do. No name is kept anywhere, so none can be published."""

import datetime as dt
import re
from typing import Annotated, ClassVar, Literal

from pydantic import WithJsonSchema

from clampstand.model.base import Entry, Many, fault, from_text

CODE = re.compile(r"[A-Z]{1,4}[0-9]{1,3}")
"""Some capitals and a number: ``T1``, ``TEC2``."""

PERSONAL = re.compile(r"\b(?:Mr|Mrs|Ms|Miss|Mx|Dr|Prof|Sir|Dame)\b\.?\s+[A-Z]|[\w.+-]{1,64}@[\w-]{1,64}\.\w")
"""A form of address before a word, or an e-mail address."""

NOT_PERSONAL = "write the role's code, as T1: nothing about a person is kept here or published"


def code_from(text: str) -> str:
    """A role code as it is; a person's name in its place is refused without being repeated."""
    if CODE.fullmatch(text):
        return text
    if re.search(r"[^\W\d_]{2}", text) and not re.search(r"[0-9]", text):
        raise fault("this looks like a person's name or initials, and a role code belongs here", NOT_PERSONAL)
    raise fault("this is not a role code", "write capitals and a number, as T1 or TEC1")


def not_personal(text: str) -> str:
    """A remark, unless somebody is named in it."""
    if PERSONAL.search(text):
        raise fault("this names a person or gives an e-mail address", NOT_PERSONAL)
    if len(text) > 300:
        raise fault(f"this line is too long ({len(text)} characters)", "keep it under 300 characters")
    return " ".join(text.split())


def level_from(text: str) -> int:
    """A level of the sign-off ladder."""
    if not re.fullmatch(r"[0-5]", text):
        raise fault(
            f"{text[:80] or 'nothing'} is not a level of sign-off", "write a whole number from 0 to 5"
        )
    return int(text)


def clock_from(text: str) -> dt.time:
    """A time of day, in hours and minutes; the seconds a spreadsheet adds may be there if they are none."""
    match = re.fullmatch(r"([01]?[0-9]|2[0-3]):([0-5][0-9])(?::00)?", text)
    if match is None:
        raise fault(f"{text[:80] or 'nothing'} is not a time of day", "write hours and minutes, as 08:50")
    return dt.time(int(match[1]), int(match[2]))


Code = Annotated[
    str, from_text(code_from), WithJsonSchema({"type": "string", "pattern": "^[A-Z]{1,4}[0-9]{1,3}$"})
]
Remark = Annotated[str, from_text(not_personal), WithJsonSchema({"type": "string"})]
Level = Annotated[int, from_text(level_from), WithJsonSchema({"type": "integer", "minimum": 0, "maximum": 5})]
ClockTime = Annotated[
    dt.time, from_text(clock_from), WithJsonSchema({"type": "string", "pattern": "^[0-9]{1,2}:[0-9]{2}$"})
]

Duty = Literal["teach", "cover", "assist", "prepare", "count", "test", "clear faults", "sign off"]
"""What somebody may do: ``assist`` is to be the second adult, ``prepare`` to put out kit."""


class Person(Entry):
    """Somebody who works here, known by a code. Who that is stands in no file of the handbook."""

    shelf: ClassVar[str] = "people"

    role: Remark
    may: Many[Duty] = ()
