"""The one Jinja environment: everything is escaped, nothing may be undefined."""

import html
import math
import re
from functools import cache

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from clampstand.calculators.kit_totals import KitTotal
from clampstand.calculators.worked import CannotWork
from clampstand.model.days import day_of_the_week, days_in_words, written_day
from clampstand.rendering.diagrams.signs import SIGNS, sign
from clampstand.rendering.page import Heading
from clampstand.rendering.prose import prose, unbroken
from clampstand.units import Quantity, number_in, shown_best


def clock_time(time: Quantity) -> str:
    """A time of the running clock in minutes, and seconds where there are any: ``12`` or ``12:30``."""
    return _clock(round(number_in(time, "s")))


def _clock(seconds: int) -> str:
    minute, second = divmod(seconds, 60)
    return f"{minute}:{second:02d}" if second else str(minute)


def clock_span(begins: Quantity, ends: Quantity) -> str:
    """From when to when a step runs, in minutes; in hours as well from two hours on.

    >>> q = Quantity
    >>> clock_span(q(5.5, "min"), q(6, "min")), clock_span(q(4, "min"), q(2884, "min"))
    ('5:30–6 min', '4 min–48 h 4 min')
    >>> clock_span(q(2884, "min"), q(2886, "min"))
    '48 h 4–6 min'
    """
    if number_in(ends, "h") < _MINUTES_ARE_ENOUGH:
        return f"{clock_time(begins)}–{clock_time(ends)} min"
    (hour, before), (last_hour, after) = _hours_and_rest(begins), _hours_and_rest(ends)
    if hour == last_hour:
        return f"{hour} h {before}–{after} min"
    first_hour = f"{hour} h " if hour else ""
    return f"{first_hour}{before} min–{last_hour} h {after} min"


_MINUTES_ARE_ENOUGH = 2.0


def _hours_and_rest(time: Quantity) -> tuple[int, str]:
    """Whole hours, and the rest as minutes of the running clock."""
    hours, seconds = divmod(round(number_in(time, "s")), 3600)
    return hours, _clock(seconds)


def duration(time: Quantity) -> str:
    """A time as people say it: minutes up to two hours, hours up to two days, then days.

    Seconds are said up to two minutes. From there on what is neither a whole nor a half minute is the next
    whole one, for somebody plans by it and nobody times it.
    """
    seconds = round(number_in(time, "s"))
    for size, name in ((86400, "days"), (3600, "h")):
        if seconds >= 2 * size:
            return f"{round(seconds / size, 1):g}\u00a0{name}"
    if seconds % 30 == 0 and (seconds >= 60 or seconds == 0):
        return f"{seconds / 60:g}\u00a0min"
    return f"{seconds}\u00a0s" if seconds < 120 else f"{math.ceil(seconds / 60)}\u00a0min"


def sentence(words: str) -> str:
    """Words with a capital letter to begin with; the rest stays as written."""
    return words[:1].upper() + words[1:]


_FIRST_LETTER = re.compile(r"^((?:<[^>]*>)*)([a-z])")


def full_sentence(words: Markup) -> Markup:
    """Words of a page as a sentence that begins with a capital letter and comes to an end.

    >>> full_sentence(Markup('<b>warm</b> water &amp; soap'))
    Markup('<b>Warm</b> water &amp; soap.')
    """
    begun = _FIRST_LETTER.sub(lambda found: found[1] + found[2].upper(), words.rstrip())
    return Markup(begun if begun.endswith((".", "!", "?")) else begun + ".")


def tolerance(words: str) -> str:
    """How far the truth may lie off, as the page says it: ``15 %`` gives ``within 15 %``."""
    return unbroken(f"within {words}" if words[:1].isdigit() or words.startswith("a factor") else words)


def slug(words: str) -> str:
    """Words as an anchor or a class: ``local rule`` gives ``local-rule``."""
    return re.sub(r"[^A-Za-z0-9.]+", "-", words).strip("-").lower()


def total_amount(total: KitTotal) -> str:
    """How much of a measured-out material comes into the room; a multiple keeps no zeros it did not have."""
    amount = total.line.amount
    if amount is None or total.amount is None:
        return ""
    if total.count == 1:
        return unbroken(str(amount))
    return summed(total.amount, amount.kind)


def amount_in_all(total: KitTotal) -> str:
    """How much of a measured-out material to order, what waits outside the room included; else how many."""
    if total.line.amount is None or total.in_all is None:
        return str(total.count)
    return summed(total.in_all, total.line.amount.kind)


def summed(amount: Quantity, kind: str) -> str:
    """A sum without zeros at the end of its decimals: how finely a sum is written means nothing."""
    number, space, spelling = shown_best(amount, kind, figures=4).partition("\u00a0")
    return f"{number.rstrip('0').rstrip('.') if '.' in number else number}{space}{spelling}"


@cache
def _sign(sign_id: str, title: str) -> Markup:
    """A drawn sign; nothing where there is no such drawing, for words stand beside every sign."""
    return Markup(sign(sign_id, title)) if sign_id in SIGNS else Markup("")


@cache
def environment() -> Environment:
    """The environment, made once; its templates are compiled once."""
    made = Environment(
        loader=PackageLoader("clampstand.rendering", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
    )
    made.filters |= {
        "amount_in_all": amount_in_all,
        "clock": clock_time,
        "clock_span": clock_span,
        "day": written_day,
        "day_of_the_week": day_of_the_week,
        "days_in_words": days_in_words,
        "duration": duration,
        "full_sentence": full_sentence,
        "prose": prose,
        "sentence": sentence,
        "slug": slug,
        "tolerance": tolerance,
        "total_amount": total_amount,
        "unbroken": unbroken,
    }
    made.globals["sign"] = _sign
    made.tests["cannot_work"] = lambda result: isinstance(result, CannotWork)
    return made


def rendered(template: str, uri: str, **context: object) -> str:
    """A template filled in for a page; ``root`` leads from the page's address to the top of the site."""
    return environment().get_template(template).render(root="../" * uri.count("/"), uri=uri, **context)


_HEADING = re.compile(r'<h([23]) id="([^"]+)"[^>]*>(.*?)</h\1>', re.DOTALL)
_TAG = re.compile(r"<[^>]+>")


def headings_of(page: str) -> tuple[Heading, ...]:
    """The headings of one of our own finished pages that carry an anchor."""
    return tuple(
        Heading(int(level), anchor, " ".join(html.unescape(_TAG.sub("", title)).split()))
        for level, anchor, title in _HEADING.findall(page)
    )
