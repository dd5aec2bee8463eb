"""What has to be ordered for the lessons of the timetable: how much, by when, for what."""

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from clampstand.calculators.day import Put, kit_for, known_lessons
from clampstand.model.kit import Item
from clampstand.model.lesson import TimetabledLesson
from clampstand.rendering.contents import Contents
from clampstand.rendering.templating import summed
from clampstand.units import Quantity


@dataclass(frozen=True, slots=True)
class Order:
    """Something to order so that it is there in time: what, how much, by when, for what."""

    item: Item
    amount: str
    by: dt.date
    lesson: TimetabledLesson
    title: str


def every_order(contents: Contents) -> Iterator[Order]:
    """Every order that the lessons of the timetable need, lesson by lesson."""
    book = contents.book
    for lesson in known_lessons(book):
        for item_id, puts in kit_for([lesson], book).items():
            item = book.kit.get(item_id)
            if item is not None and item.lead is not None:
                title = book.practicals[lesson.practical].title
                yield Order(item, how_much(puts, spares=True), item.lead.before(lesson.date), lesson, title)


def to_order(date: dt.date, following: dt.date | None, contents: Contents) -> list[Order]:
    """What must be ordered on this day: the next sheet would come too late for it."""
    return [
        order
        for order in every_order(contents)
        if date <= order.by and (following is None or order.by < following)
    ]


def how_much(puts: Sequence[Put], *, spares: bool) -> str:
    """A number of things and the amounts of what is measured out, allowances included."""
    count = sum(put.total.count if spares else put.without_spares for put in puts if put.total.amount is None)
    amounts: dict[str, Quantity] = {}
    for put in puts:
        amount, in_all = put.total.line.amount, put.total.in_all
        if amount is not None and in_all is not None:
            before = amounts.get(amount.kind)
            amounts[amount.kind] = in_all if before is None else before + in_all
    told = [summed(amount, kind) for kind, amount in amounts.items()]
    return " and ".join([*([str(count)] if count else []), *told])
