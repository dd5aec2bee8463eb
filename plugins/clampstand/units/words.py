"""Quantities that a sentence says in words: ``about a metre``, ``half a minute``, ``2 metres``."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from clampstand.units.amounts import Amount, read_amount

_NUMBERS = {
    "half a": "0.5",
    "half an": "0.5",
    "a quarter of a": "0.25",
    "a quarter of an": "0.25",
    "three quarters of a": "0.75",
    "three quarters of an": "0.75",
    "a couple of": "2",
    "a dozen": "12",
    "a hundred": "100",
    "one hundred": "100",
    "a thousand": "1000",
    "a": "1",
    "an": "1",
    **{
        word: str(value)
        for value, word in enumerate(
            (
                "one",
                "two",
                "three",
                "four",
                "five",
                "six",
                "seven",
                "eight",
                "nine",
                "ten",
                "eleven",
                "twelve",
            ),
            start=1,
        )
    },
    "fifteen": "15",
    "twenty": "20",
    "thirty": "30",
    "forty": "40",
    "fifty": "50",
    "sixty": "60",
    "ninety": "90",
}
_UNITS = {
    **dict.fromkeys(("metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("inch", "inches"), "in"),
    "feet": "ft",
    "seconds": "s",
    **dict.fromkeys(("minute", "minutes"), "min"),
    **dict.fromkeys(("hour", "hours"), "h"),
    **dict.fromkeys(("volt", "volts"), "V"),
    **dict.fromkeys(("kilovolt", "kilovolts"), "kV"),
    **dict.fromkeys(("milliampere", "milliamperes", "milliamp", "milliamps"), "mA"),
    **dict.fromkeys(("ampere", "amperes", "amp", "amps"), "A"),
    **dict.fromkeys(("gram", "grams"), "g"),
    **dict.fromkeys(("kilogram", "kilograms", "kilo", "kilos"), "kg"),
    **dict.fromkeys(("litre", "litres", "liter", "liters"), "L"),
    **dict.fromkeys(("millilitre", "millilitres", "milliliter", "milliliters"), "mL"),
}
"""One ``second`` is left out: it is mostly the one after the first."""
_HALF_A_SECOND = re.compile(r"(?<![\w-])(half a) (second)(?!\w)", re.IGNORECASE)


def _shortest(names: Iterable[str]) -> tuple[str, ...]:
    """The names that hold none of the others: ``metre`` stands for ``metres`` and ``millimetre``."""
    kept: list[str] = []
    for name in sorted(names, key=len):
        if not any(shorter in name for shorter in kept):
            kept.append(name)
    return tuple(kept)


_STEMS = _shortest((*_UNITS, "second"))
"""Every written-out unit holds one of these."""


def _any(words: dict[str, str]) -> str:
    return "|".join(re.escape(word) for word in sorted(words, key=len, reverse=True))


_SAID = re.compile(
    rf"(?<![\w.-])({_any(_NUMBERS)}|[0-9]{{1,6}}(?:\.[0-9]{{1,6}})?)[ \n-]({_any(_UNITS)})"
    r"(?![\w-])(?! rule| stick)",
    re.IGNORECASE,
)
_PER = re.compile(r"\b(?:per|each|every|of|in|times|once|twice)\s+$", re.IGNORECASE)
"""Before ``a minute``, what makes it a rate or a part: so many in a minute, a tenth of a volt."""
_ON_A_METER = re.compile(
    r"\b(?:on|through|with|read|using)\s+an?\s+meters?(?! (?:of|between|apart|away|back)\b)", re.IGNORECASE
)
"""A meter that measures; the length is a metre, or a meter in American spelling."""


def amounts_in_words(prose: str) -> Iterator[tuple[int, Amount]]:
    """Every quantity whose unit is written out, with the position of its first character.

    >>> [str(amount) for _, amount in amounts_in_words("Stand about a metre back for half an hour.")]
    ['a metre', 'half an hour']
    >>> list(amounts_in_words("Measure the lead on a meter."))
    []
    """
    folded = prose.casefold()
    if not any(stem in folded for stem in _STEMS):
        return  # as in most sentences, and much cheaper to see
    meters = {match.end() for match in _ON_A_METER.finditer(prose)}
    for match in (*_SAID.finditer(prose), *_HALF_A_SECOND.finditer(prose)):
        number, unit = match[1].casefold(), _UNITS.get(match[2].casefold(), "s")
        if number in ("a", "an") and (match.end() in meters or _PER.search(prose[: match.start()])):
            continue
        amount = read_amount(f"{_NUMBERS.get(number, number)} {unit}")
        yield match.start(), replace(amount, written=" ".join(match.group().split()))
