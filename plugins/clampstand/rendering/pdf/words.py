"""The words of the parts that several cards share, as plain data for a template outside the browser."""

from collections.abc import Sequence
from typing import Any, TypeAlias

from clampstand.calculators.clock import Clocked
from clampstand.model.days import written_day
from clampstand.model.practical import Review
from clampstand.model.step import StepWarning
from clampstand.rendering.cards.emergency import Call, Panel
from clampstand.rendering.cards.finishing import Printed
from clampstand.rendering.cards.steps import pauses
from clampstand.rendering.contents import Contents
from clampstand.rendering.diagrams.signs import SIGNS, sign
from clampstand.rendering.prose import Quotes, plain
from clampstand.rendering.templating import clock_time

Data: TypeAlias = dict[str, Any]
"""Texts, numbers, lists and further such: what JSON can hold."""


def common(kind: str, title: str, printed: Printed, contents: Contents) -> Data:
    """What every card says about itself."""
    code = str(printed.code).replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1)
    return {
        "kind": kind,
        "title": title,
        "id": printed.card_id,
        "address": printed.address,
        "code": code if printed.code else "",
        "department": contents.book.department.name,
    }


def steps(clocked: Sequence[Clocked], quotes: Quotes, leader: str, running: bool) -> list[Data]:
    """Steps in order. The heading says who does most of them; only others are named."""
    paused = pauses([one.step for one in clocked])
    return [
        {
            "number": str(number),
            "clock": clock_time(one.begins) if running else "",
            "by": "" if list(one.step.by) == [leader] else " and ".join(one.step.by) or "anyone",
            "do": plain(one.step.do, quotes),
            "warn": warning(one.step.warn, quotes),
            "pause": number in paused,
        }
        for number, one in enumerate(clocked, start=1)
    ]


def warning(warn: StepWarning | None, quotes: Quotes) -> Data | None:
    """A warning: its signal word, the hazard, and how to avoid it."""
    if warn is None:
        return None
    return {
        "signal": warn.signal,
        "hazard": plain(warn.hazard, quotes),
        "avoid": plain(warn.avoid, quotes),
    }


def panel(emergencies: Panel) -> Data:
    """The emergencies of a card, and last the telephone."""
    others = f"; so has: {'; '.join(emergencies.others)}" if emergencies.others else ""
    return {
        "rows": [{"trigger": row.trigger, "say": row.say, "do": row.actions} for row in emergencies.rows],
        "calls": calls(emergencies.calls),
        "after": f"Each has its own card{others}.",
        "telephone": drawn("telephone", "Telephone"),
    }


def calls(whom: Sequence[Call]) -> list[Data]:
    """Whom to ring and how, in order."""
    return [{"role": one.role, "call": one.call} for one in whom]


def foot(review: Review, printed: Printed) -> list[str]:
    """What stands at the foot of every side, before its number."""
    return [
        f"Version {review.version}, read {written_day(review.last)}",
        f"Read again by {written_day(review.due)}",
        f"Card {printed.card_id}",
    ]


def drawn(sign_id: str, words: str) -> Data:
    """A sign and the words that stand for it; without a drawing where there is no such sign."""
    return {"sign": sign(sign_id, words) if sign_id in SIGNS else "", "words": words}
