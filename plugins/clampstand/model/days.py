"""A day in words, and what was meant by one written otherwise than year-month-day: said, never guessed."""

import datetime as dt
import re
from collections.abc import Iterator

_EXAMPLE = "write year-month-day, for example 2026-01-15"
_DAY_FIRST = re.compile(r"([0-9]{1,2})[/. -]([0-9]{1,2})[/. -]([0-9]{2}|[0-9]{4})")
_YEAR_FIRST = re.compile(r"([0-9]{4})[/. -]([0-9]{1,2})[/. -]([0-9]{1,2})(?:[T ][0-9:.]+Z?)?")
_WRITTEN = re.compile(r"(?<![\w-])([0-9]{4})-([0-9]{2})-([0-9]{2})(?![\w-])")
_SERIAL = re.compile(r"([1-9][0-9]{4})(?:[.,][0-9]{1,12})?")
_DAY_ZERO = dt.date(1899, 12, 30)
"""Day 0 of the count most spreadsheets keep, so that day 60, which never was, does not matter after 1900."""

_MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def written_day(day: dt.date) -> str:
    """A date as people write it, the same in every locale.

    >>> written_day(dt.date(2026, 1, 15))
    '15\\xa0January\\xa02026'
    """
    return f"{day.day}\u00a0{_MONTHS[day.month - 1]}\u00a0{day.year}"


def day_of_the_week(day: dt.date) -> str:
    """A date with its day of the week, by which a week's lessons are planned.

    >>> day_of_the_week(dt.date(2026, 1, 15))
    'Thursday 15\\xa0January\\xa02026'
    """
    return f"{_DAYS[day.weekday()]} {written_day(day)}"


def days_in_words(text: str) -> str:
    """A sentence with its days as people write them.

    >>> days_in_words("T-1 was tested on 2024-09-04")
    'T-1 was tested on 4\\xa0September\\xa02024'
    """
    return _WRITTEN.sub(_in_words, text)


def _in_words(match: re.Match[str]) -> str:
    day = _day(int(match[1]), int(match[2]), int(match[3]))
    return written_day(day) if day else match[0]


def misread_day(text: str) -> tuple[str, str]:
    """Why a text is not read as a day, and what to write instead.

    >>> misread_day("15/01/2026")
    ('15/01/2026 is not a date here', 'write it as 2026-01-15')
    >>> misread_day("05/01/2026")
    ('05/01/2026 may be two days, with the day or the month first', 'write 2026-01-05 or 2026-05-01')
    >>> misread_day("46037")[1]
    'show the column as year-month-day and save it again; 46037 is mostly 2026-01-15'
    """
    if match := _DAY_FIRST.fullmatch(text):
        meant = [day.isoformat() for day in _either_way(match[1], match[2], match[3])]
        if len(meant) == 2:
            return (
                f"{text} may be two days, with the day or the month first",
                f"write {meant[0]} or {meant[1]}",
            )
        return f"{text} is not a date here", f"write it as {meant[0]}" if meant else _EXAMPLE
    if match := _YEAR_FIRST.fullmatch(text):
        day = _day(int(match[1]), int(match[2]), int(match[3]))
        return f"{text} is not a date here", f"write it as {day.isoformat()}" if day else _EXAMPLE
    if match := _SERIAL.fullmatch(text):
        day = _DAY_ZERO + dt.timedelta(days=int(match[1]))
        mend = f"show the column as year-month-day and save it again; {match[1]} is mostly {day.isoformat()}"
        return f"{text} is the number a spreadsheet keeps for a day, not a date", mend
    return f"{text[:80] or 'nothing'} is not a date", _EXAMPLE


def _either_way(first: str, second: str, year: str) -> Iterator[dt.date]:
    """The days meant with the day first and with the month first; one of a pair that is the same."""
    in_full = int(year) + 2000 if len(year) == 2 else int(year)
    day_first = _day(in_full, int(second), int(first))
    month_first = _day(in_full, int(first), int(second))
    yield from dict.fromkeys(day for day in (day_first, month_first) if day)


def _day(year: int, month: int, day: int) -> dt.date | None:
    try:
        return dt.date(year, month, day)
    except ValueError:
        return None
