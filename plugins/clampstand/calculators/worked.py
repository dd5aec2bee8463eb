"""A worked number: its value with the formula, the inputs and where each of them came from."""

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass
from typing import ParamSpec

from clampstand.units import Amount, OutOfRange, Quantity, UnlikeUnits, shown_best

P = ParamSpec("P")


class CannotWork(Exception):
    """A number cannot be worked out from what the definition says; the text says what is missing."""


@dataclass(frozen=True, slots=True)
class Input:
    """One input of a worked number.

    Args:
        name: what it is, in words.
        value: as printed, with its unit.
        origin: where it comes from: the register, the practical, a citation's words.
        citation: id of the citation, where there is one.
    """

    name: str
    value: str
    origin: str
    citation: str = ""


@dataclass(frozen=True, slots=True)
class Worked:
    """A number the handbook worked out. What a rule judges and what a page prints is this same object.

    Args:
        id: the calculator it came from and what it was worked for: ``activity-today/S-A2``.
        title: what it is, in words.
        value: the value.
        kind: its kind of quantity, from :data:`clampstand.units.KINDS`.
        shown: the value as printed, rounded towards safety.
        formula: the formula as a person writes it.
        inputs: what it was worked from.
        day: the day it holds for, where it depends on one.
        within: how far the truth may lie from it, in words.
        note: what else to know, in one or two sentences.
        page_only: whether nobody needs it at the bench, so that a card leaves it out.
    """

    id: str
    title: str
    value: Quantity
    kind: str
    shown: str
    formula: str
    inputs: tuple[Input, ...]
    day: dt.date | None = None
    within: str = ""
    note: str = ""
    page_only: bool = False

    @property
    def citations(self) -> tuple[str, ...]:
        """The citations its inputs rest on, each once, in order."""
        return tuple(dict.fromkeys(entry.citation for entry in self.inputs if entry.citation))


def written(name: str, amount: Amount, origin: str, citation: str = "") -> Input:
    """An input printed as its author wrote it."""
    return Input(name, str(amount), origin, citation)


def computed(name: str, worked: Worked) -> Input:
    """An input that is itself a worked number."""
    return Input(name, worked.shown, f"worked out: {worked.title}")


def measured(name: str, value: Quantity, kind: str, origin: str, citation: str = "") -> Input:
    """An input printed in the unit that suits its size."""
    return Input(name, shown_best(value, kind), origin, citation)


def stated(reckon: Callable[P, Quantity], *args: P.args, **kwargs: P.kwargs) -> Quantity:
    """What a formula gives. Raises CannotWork for a number that is none of its kind or size."""
    try:
        return reckon(*args, **kwargs)
    except (OutOfRange, UnlikeUnits) as reason:
        raise CannotWork(str(reason)) from None
