"""How far a good result may lie from a number: ``15 %``, ``5 K``, ``a factor of two``."""

import re

from clampstand.units import Amount, NotAnAmount, Quantity, read_amount

_PER_CENT = re.compile(r"([0-9]{1,3}(?:\.[0-9]{1,3})?)\s?%")
_FACTOR = re.compile(r"a factor of ([a-z]+|[0-9]{1,3}(?:\.[0-9]{1,3})?)")
_WORDS = {"two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "ten": 10.0}
ORDER_OF_MAGNITUDE = 10.0
"""What a tolerance that nobody wrote, or wrote in other words, still leaves out."""


def widened(amount: Amount, within: str | None) -> tuple[Quantity, Quantity]:
    """The range of an amount, widened by a tolerance."""
    text = (within or "").strip()
    if match := _PER_CENT.fullmatch(text):
        part = float(match[1]) / 100
        return amount.low - abs(amount.low) * part, amount.high + abs(amount.high) * part
    if (match := _FACTOR.fullmatch(text)) and (factor := _factor(match[1])):
        return amount.low / factor, amount.high * factor
    kind = "temperature difference" if amount.kind == "temperature" else amount.kind
    try:
        spread = read_amount(text, kind).value
    except NotAnAmount:
        return amount.low / ORDER_OF_MAGNITUDE, amount.high * ORDER_OF_MAGNITUDE
    return amount.low - spread, amount.high + spread


def is_a_temperature(within: str) -> bool:
    """Whether a tolerance is written as a temperature, in degrees, where a difference is meant.

    >>> is_a_temperature("5 °C"), is_a_temperature("5 K"), is_a_temperature("a factor of two")
    (True, False, False)
    """
    try:
        if read_amount(within).kind != "temperature":
            return False
    except NotAnAmount:
        return False
    try:
        read_amount(within, "temperature difference")
    except NotAnAmount:
        return True
    return False


def _factor(text: str) -> float | None:
    return _WORDS.get(text) or (float(text) if text[0].isdigit() and float(text) >= 1 else None)
