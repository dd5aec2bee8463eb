"""The ground of every definition: frozen, no unknown keys, and fields that read a person's text once."""

import datetime as dt
import re
from collections import Counter
from collections.abc import Callable, Mapping
from typing import Annotated, Any, ClassVar, Self, TypeVar

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    GetJsonSchemaHandler,
    PrivateAttr,
    WithJsonSchema,
)
from pydantic_core import CoreSchema, PydanticCustomError

from clampstand.findings import Route, Spot
from clampstand.model.days import misread_day
from clampstand.units import KINDS, Amount, NotAnAmount, is_same, number_in, read_amount

T = TypeVar("T")

_NOWHERE = Spot("")

IN_BRACES = re.compile(r"\{([^{}\n]{1,300})\}")
"""What a text quotes: the name of a thing or a number, in braces."""


class Definition(BaseModel):
    """A part of the handbook as its author wrote it. Frozen; a key it does not know is an error."""

    model_config = ConfigDict(frozen=True, extra="forbid", arbitrary_types_allowed=True)


class Entry(Definition):
    """A definition with an id of its own, which knows where it was written."""

    shelf: ClassVar[str] = ""
    """What a collection of these is called, as in ``practicals``."""

    _id: str = PrivateAttr(default="")
    _spot: Spot = PrivateAttr(default=_NOWHERE)
    _elsewhere: dict[Route, Spot] = PrivateAttr(default_factory=dict)

    @property
    def _private(self) -> dict[str, Any]:
        """Where pydantic keeps what is private: asked by name it takes five times as long."""
        return self.__pydantic_private__ or {}

    @property
    def id(self) -> str:
        """The id others name it by."""
        return self._private["_id"]  # type: ignore[no-any-return]

    @property
    def spot(self) -> Spot:
        """Where it was written."""
        return self._private["_spot"]  # type: ignore[no-any-return]

    def at(self, *route: str | int) -> Spot:
        """Where one of its values was written."""
        private = self._private
        spot: Spot = private["_elsewhere"].get(route) or private["_spot"].to(*route)
        return spot

    def placed(self, its_id: str, spot: Spot) -> Self:
        """The same definition, told its id and where it stands. For the reader, once."""
        self._id = its_id
        self._spot = spot
        return self

    def superseded(self, values: Mapping[str, object], written: Mapping[Route, Spot]) -> Self:
        """The same definition with newer values, which are written elsewhere.

        Args:
            values: field → its newer value.
            written: route of a value → where the newer one is written.
        """
        newer = self.model_copy(update=dict(values))
        newer._elsewhere = {**self._elsewhere, **written}
        return newer


def fault(problem: str, mend: str = "") -> PydanticCustomError:
    """A validation error in our own words, with what to do about it."""
    return PydanticCustomError("clampstand", "{problem}", {"problem": problem, "mend": mend})


def _text(raw: object) -> str:
    if not isinstance(raw, str):
        raise fault("a single text belongs here, not a list or a block", "write it on one line")
    return raw.strip()


def from_text(read: Callable[[str], T]) -> BeforeValidator:
    """A validator for a field written as text, read by a function that raises :func:`fault`."""

    def validate(raw: object) -> object:
        return read(_text(raw)) if isinstance(raw, str | list | dict) or raw is None else raw

    return BeforeValidator(validate)


def _words(text: str) -> str:
    if not text:
        raise fault("nothing is written here", "write the words, or leave the key out")
    if len(text) > 4000:
        raise fault(f"this text is too long ({len(text)} characters)", "keep it under 4000 characters")
    return text


def _line(text: str) -> str:
    words = _words(text)
    if len(words) > 300:
        raise fault(f"this line is too long ({len(words)} characters)", "keep it under 300 characters")
    return " ".join(words.split())


_ID = re.compile(r"[A-Za-z][A-Za-z0-9.-]{0,79}")


def _id(text: str) -> str:
    if not _ID.fullmatch(text):
        raise fault(
            f"{text[:80] or 'nothing'} is not an id", "use letters, digits, hyphens and dots, a letter first"
        )
    return text


def count_from(text: str) -> int:
    """A whole number, from its text."""
    if not re.fullmatch(r"[0-9]{1,6}", text):
        raise fault(f"{text[:80] or 'nothing'} is not a whole number", "write digits only, for example 3")
    return int(text)


_SCHEMES = ("http", "https", "mailto", "tel")
_LINK = re.compile(rf"(?:{'|'.join(_SCHEMES)}):[^\s<>\"]{{1,290}}", re.IGNORECASE)


def _link(text: str) -> str:
    if not _LINK.fullmatch(text):
        raise fault(
            f"{text[:80] or 'nothing'} is no address that a page may link to",
            f"write one that begins with {', '.join(f'{each}:' for each in _SCHEMES)} and has no space in it",
        )
    return text


def _some(text: str) -> int:
    count = count_from(text)
    if count == 0:
        raise fault("0 is nobody and nothing", "write 1 or more")
    return count


_OLDEST = 99
"""Of whoever comes to a lesson."""


def age_from(text: str) -> int:
    """Whole years, from their text."""
    age = count_from(text)
    if not 0 < age <= _OLDEST:
        raise fault(f"{age} is nobody's age here", "write whole years, for example 16")
    return age


_NUMBER = re.compile(r"[-−]?[0-9]{1,15}(\.[0-9]{1,15})?([eE][-+]?[0-9]{1,3})?")


def _number(text: str) -> float:
    if not _NUMBER.fullmatch(text):
        raise fault(
            f"{text[:80] or 'nothing'} is not a plain number", "write digits and a point, for example 0.85"
        )
    return float(text.replace("−", "-"))


def _yes_or_no(text: str) -> bool:
    if text not in ("yes", "no"):
        raise fault(f"{text[:80] or 'nothing'} is neither yes nor no", "write yes or no")
    return text == "yes"


def _day(text: str) -> dt.date:
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        raise fault(*misread_day(text))
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise fault(
            f"{text} is not a day of the calendar", "write year-month-day, for example 2026-01-15"
        ) from None


_INTERVAL = re.compile(r"([1-9][0-9]{0,3}) (day|week|month|year)s?")


class Interval(Definition):
    """A length of time by the calendar, as in ``24 months``: not a quantity, for months differ."""

    count: int
    unit: str

    def after(self, day: dt.date) -> dt.date:
        """The day so long after another; 29 February goes to 28 February where the year has none.

        Beyond the ends of the calendar it is the last day there is, or the first.
        """
        try:
            return self._after(day)
        except (ValueError, OverflowError):
            return dt.date.max if self.count > 0 else dt.date.min

    def _after(self, day: dt.date) -> dt.date:
        if self.unit in ("day", "week"):
            return day + dt.timedelta(days=self.count * (7 if self.unit == "week" else 1))
        months = day.year * 12 + day.month - 1 + self.count * (12 if self.unit == "year" else 1)
        year, month = divmod(months, 12)
        last = (dt.date(year + (month == 11), (month + 1) % 12 + 1, 1) - dt.timedelta(days=1)).day
        return dt.date(year, month + 1, min(day.day, last))

    def before(self, day: dt.date) -> dt.date:
        """The day so long before another."""
        return Interval(count=-self.count, unit=self.unit).after(day)

    def __str__(self) -> str:
        return f"{self.count} {self.unit}{'s' if self.count != 1 else ''}"


def is_same_value(one: object, other: object) -> bool:
    """Whether two values mean the same: ``1 h`` and ``60 min`` do, and ``1 year`` and ``12 months``."""
    if isinstance(one, Amount) and isinstance(other, Amount):
        if (one.written, one.kind) == (other.written, other.kind):
            return True
        return one.kind == other.kind and is_same(one.low, other.low) and is_same(one.high, other.high)
    if isinstance(one, Interval) and isinstance(other, Interval):
        by_months = {one.unit, other.unit} <= {"month", "year"}
        return one == other or (by_months and _months(one) == _months(other))
    return one == other


def _months(interval: Interval) -> int:
    return interval.count * (12 if interval.unit == "year" else 1)


def interval_from(text: str) -> Interval:
    """An interval of the calendar, from its text."""
    match = _INTERVAL.fullmatch(text)
    if match is None:
        raise fault(
            f"{text[:80] or 'nothing'} is not an interval", "write a number and days, weeks, months or years"
        )
    return Interval(count=int(match[1]), unit=match[2])


_NEVER_BELOW_NOUGHT = frozenset(
    {"mass", "time", "resistance", "capacitance", "air changes", "mass rate", "concentration", "energy"}
)
_MORE_THAN_NOUGHT = frozenset({"length", "volume", "activity", "density", "molar mass"})
"""Of these nothing at all is no measurement either: formulae divide by it."""


def _amount_of(kind: str | None) -> Callable[[str], Amount]:
    def read(text: str) -> Amount:
        try:
            amount = read_amount(text, kind)
        except NotAnAmount as wrong:
            raise fault(wrong.problem, wrong.mend) from None
        if kind is not None:
            _within_nature(amount, kind)
        return amount

    return read


def _within_nature(amount: Amount, kind: str) -> None:
    """Raises a fault for a property that nothing can have, which no formula could take."""
    least = float(amount.low.magnitude)  # no unit of these kinds counts from anywhere but nought
    if kind in _MORE_THAN_NOUGHT and least <= 0:
        raise fault(
            f"{amount} cannot be: {kind} is always more than nothing", "look at the number and its sign"
        )
    if kind in _NEVER_BELOW_NOUGHT and least < 0:
        raise fault(f"{amount} is less than nothing", "look at the sign")
    if kind == "fraction" and not 0 <= number_in(amount.low, "") <= number_in(amount.high, "") <= 1:
        raise fault(f"{amount} is no part of a whole", "write from 0 % to 100 %, or ppm")


def any_amount_from(text: str) -> Amount:
    """A quantity of whatever kind, from its text."""
    return _amount_of(None)(text)


def _longer_than_nothing(text: str) -> Amount:
    amount = _amount_of("time")(text)
    if amount.low <= amount.low * 0:
        raise fault(f"{amount} is no time at all", "write a time of more than nothing, for example 40 min")
    return amount


_PATTERN_OF_AMOUNT = "^[-−]?[0-9].*[^0-9 .]"
"""For editors, which cannot know our grammar: digits, and something that can be a unit."""


def _schema(pattern: str, advice: str, example: str) -> WithJsonSchema:
    """How an editor judges a text, and what it says when the text does not fit."""
    return WithJsonSchema(
        {"type": "string", "pattern": pattern, "patternErrorMessage": advice, "examples": [example]}
    )


def _amount(kind: str) -> Any:
    example = KINDS[kind].example
    advice = f"write a {kind} with its unit, for example {example}"
    return Annotated[Amount, from_text(_amount_of(kind)), _schema(_PATTERN_OF_AMOUNT, advice, example)]


def _as_list(raw: object) -> object:
    if isinstance(raw, str):
        return [raw]
    texts = [each.strip() for each in raw if isinstance(each, str)] if isinstance(raw, list) else []
    twice = next((text for text, count in Counter(texts).items() if count > 1), None)
    if twice is not None:
        raise fault(f"{twice[:80]} stands here twice", "keep one of the two, or write the one that was meant")
    return raw


class _OneOrMore:
    """Tells an editor that a single one may stand without the brackets of a list."""

    def __get_pydantic_json_schema__(self, core: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        many = handler(core)
        return {"anyOf": [many["items"], many]}


Words = Annotated[str, from_text(_words)]
Line = Annotated[str, from_text(_line)]
Id = Annotated[
    str, from_text(_id), _schema(f"^{_ID.pattern}$", "write letters, digits, hyphens and dots", "gm-tube")
]
Count = Annotated[
    int, from_text(count_from), WithJsonSchema({"type": ["integer", "string"], "pattern": "^[0-9]{1,6}$"})
]
Some = Annotated[
    int,
    from_text(_some),
    WithJsonSchema({"type": ["integer", "string"], "minimum": 1, "pattern": "^0*[1-9][0-9]{0,5}$"}),
]
"""A count of what is there at all: a class, a group."""
Link = Annotated[
    str,
    from_text(_link),
    _schema("^(https?|mailto|tel):[^ ]+$", "write an address with https: in front", "https://example.org"),
]
"""An address a page may link to. Any other scheme could run something, or smuggle it in."""
Age = Annotated[
    int,
    from_text(age_from),
    WithJsonSchema({"type": ["integer", "string"], "minimum": 1, "pattern": "^0*[1-9][0-9]?$"}),
]
"""In whole years, as birthdays are counted."""
Number = Annotated[
    float,
    from_text(_number),
    WithJsonSchema({"type": ["number", "string"], "pattern": f"^{_NUMBER.pattern}$"}),
]
YesNo = Annotated[bool, from_text(_yes_or_no), WithJsonSchema({"enum": ["yes", "no"]})]
Day = Annotated[
    dt.date,
    from_text(_day),
    _schema("^[0-9]{4}-[0-9]{2}-[0-9]{2}$", "write year-month-day, for example 2026-01-15", "2026-01-15"),
]
CalendarTime = Annotated[
    Interval,
    from_text(interval_from),
    _schema(f"^{_INTERVAL.pattern}$", "write a number and days, weeks, months or years", "12 months"),
]
AnyAmount = Annotated[
    Amount,
    from_text(any_amount_from),
    _schema(_PATTERN_OF_AMOUNT, "write a number with its unit, for example 50 mm", "50 mm"),
]

Length = _amount("length")
Volume = _amount("volume")
Mass = _amount("mass")
Time = _amount("time")
SomeTime = Annotated[
    Amount,
    from_text(_longer_than_nothing),
    _schema(_PATTERN_OF_AMOUNT, "write a time of more than nothing, for example 40 min", "40 min"),
]
"""A time that formulae divide by."""
Activity = _amount("activity")
Voltage = _amount("voltage")
Current = _amount("current")
Resistance = _amount("resistance")
Capacitance = _amount("capacitance")
Temperature = _amount("temperature")
AirChanges = _amount("air changes")
MassRate = _amount("mass rate")
Concentration = _amount("concentration")
Fraction = _amount("fraction")
Energy = _amount("energy")
Density = _amount("density")
MolarMass = _amount("molar mass")

Many = Annotated[tuple[T, ...], BeforeValidator(_as_list), _OneOrMore()]
"""One or more: a single one may be written without the brackets of a list."""
