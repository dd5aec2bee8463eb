"""The page of all worked numbers: how each is worked out, an example from the content, and a panel to try."""

import inspect
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

from clampstand.calculators import CALCULATORS
from clampstand.calculators.worked import CannotWork, Worked
from clampstand.model.practical import Expectation, Practical
from clampstand.physics import (
    attenuation,
    carbon_dioxide,
    chemistry,
    counting,
    decay,
    detection,
    dose,
    dose_rules,
    dry_ice,
    electricity,
    electrons,
    gas,
    geometry,
    heat,
    ionisation,
    light,
    mechanics,
    ranges,
    room_air,
    sound,
)
from clampstand.rendering.contents import Contents
from clampstand.rendering.live.catalogue import panels_for
from clampstand.rendering.live.panel import Panel
from clampstand.rendering.page import SearchWords, SitePage
from clampstand.rendering.pages.making import made
from clampstand.rendering.prose import Quotes, quotes_of
from clampstand.units import Formula

_SUBJECTS = (
    attenuation, carbon_dioxide, chemistry, counting, decay, detection, dose, dose_rules, dry_ice,
    electricity, electrons, gas, geometry, heat, ionisation, light, mechanics, ranges, room_air, sound,
)  # fmt: skip
_FORMULA = re.compile(r",? ``[^`]*``")
_CODE = re.compile(r"``([^`]*)``|:[a-z]+:`([^`]*)`")
_SOURCE = re.compile(r"Source: (.*?)(?:\.\s(?!\s*(?:[A-Z][a-z]{0,4}\.|[0-9(]))|\.$|$)", re.DOTALL)
"""A source ends with a full stop; the one of an abbreviation stands before another, or before a number."""


@dataclass(frozen=True, slots=True)
class Argument:
    """One symbol of a formula in words: its name, its unit and the range where the formula holds."""

    name: str
    unit: str
    holds: str


@dataclass(frozen=True, slots=True)
class FormulaShown:
    """A formula as the page shows it."""

    written: str
    gives: str
    says: str
    source: str
    arguments: tuple[Argument, ...]


@dataclass(frozen=True, slots=True)
class NumberShown:
    """One worked number of the catalogue.

    Args:
        id: the word ``compute`` uses.
        says: what it works out, in a sentence.
        example: the practical whose numbers are shown, if any asks for it.
        entry: that practical's words about it.
        quotes: what those words may quote.
        worked: the numbers of the example.
        formulae: the closed formulae they come from.
        panels: what may be tried.
        used_in: every practical that asks for it.
    """

    id: str
    says: str
    example: Practical | None
    entry: Expectation | None
    quotes: Quotes
    worked: tuple[Worked, ...]
    formulae: tuple[FormulaShown, ...]
    panels: tuple[Panel, ...]
    used_in: tuple[Practical, ...]

    @property
    def title(self) -> str:
        """Its id as words."""
        return self.id.replace("-", " ").capitalize()


def numbers_page(contents: Contents) -> SitePage:
    """Every worked number there is."""
    numbers = [_shown(name, contents) for name in CALCULATORS]
    words = (text for number in numbers for text in (number.title, number.says))
    return made(
        "numbers/index.html",
        "Worked numbers",
        "numbers",
        contents,
        numbers=numbers,
        search=SearchWords(
            "What the handbook works out, how, and from what.", " ".join(dict.fromkeys(words))
        ),
        in_navigation=True,
    )


def _shown(name: str, contents: Contents) -> NumberShown:
    """One worked number, with the first practical that could work it out as its example."""
    asked = list(_asking(name, contents))
    example = next((each for each in asked if each[2]), None)
    practical, entry, worked = example or (None, None, ())
    panels = panels_for(name, practical, contents.book, entry.given) if practical and entry else ()
    written = dict.fromkeys(number.formula for number in worked)
    return NumberShown(
        id=name,
        says=_sentence(CALCULATORS[name]),
        example=practical,
        entry=entry,
        quotes=quotes_of(practical, contents.book) if practical else contents.quotes,
        worked=worked,
        formulae=tuple(formula for text in written for formula in formulae_in(text)),
        panels=panels,
        used_in=tuple({each[0].id: each[0] for each in asked}.values()),
    )


def _asking(name: str, contents: Contents) -> Iterator[tuple[Practical, Expectation, tuple[Worked, ...]]]:
    """Every practical that asks for a number, with what came of it, if anything did."""
    for practical in contents.book.practicals.values():
        for entry, found in contents.sheets[practical.id].numbers:
            if entry.compute == name:
                yield practical, entry, () if isinstance(found, CannotWork) else found


def _sentence(function: object) -> str:
    """The first sentence of a docstring, without the words for authors after its colon."""
    text = (inspect.getdoc(function) or "").split("\n\n")[0].replace("\n", " ")
    plain = _FORMULA.sub("", text.split(": ``")[0])
    return _CODE.sub(lambda found: found[1] or found[2], plain).rstrip(".") + "."


@cache
def _by_written() -> dict[str, Formula[Any]]:
    found = (value for subject in _SUBJECTS for value in vars(subject).values() if isinstance(value, Formula))
    return {formula.written: formula for formula in found}


def formulae_in(text: str) -> tuple[FormulaShown, ...]:
    """The closed formulae that a worked number's formula names, in its order."""
    known = _by_written()
    if text in known:
        return (_formula_shown(known[text]),)
    parts = (part.strip() for part in text.split(","))
    return tuple(_formula_shown(known[part]) for part in parts if part in known)


def _formula_shown(formula: Formula[Any]) -> FormulaShown:
    says = inspect.getdoc(formula.body) or ""
    source = _SOURCE.search(says.split(">>>")[0])
    arguments = (
        Argument(name.replace("_", " "), _unit_in_words(takes.unit), str(takes).partition(" (in ")[0])
        for name, takes in formula.takes.items()
    )
    return FormulaShown(
        formula.written,
        _unit_in_words(formula.gives),
        _sentence(formula.body),
        " ".join(_CODE.sub(lambda found: found[1] or found[2], source[1]).split()) if source else "",
        tuple(arguments),
    )


def _unit_in_words(expression: str) -> str:
    """A unit expression of the registry as the page writes it: ``Sv*m**2/decay`` gives ``Sv·m²/decay``."""
    spelled = expression.replace("**2", "²").replace("**3", "³").replace("**0.5", "^½").replace("*", "·")
    return spelled.replace("ohm", "Ω") or "a pure number"
