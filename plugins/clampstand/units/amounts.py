"""A person's text becomes a quantity here, once, by one strict grammar.

Pint's own parser never sees the text: it reads ``15 000 ppm`` as 0 ppm and ``1,5 m`` as 15 m,
and ``9**9**9 m`` keeps it busy for ever.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal
from functools import lru_cache

from clampstand.units.kinds import KINDS, KINDS_BY_SPELLING, unit_written
from clampstand.units.registry import Quantity, number_in, of_unit

LONGEST_TEXT = 60
LARGEST, SMALLEST = Decimal("1e15"), Decimal("1e-15")

_SPACE = "[ \u00a0\u2009\u202f]"
_WHOLE = rf"[0-9]{{1,3}}(?:{_SPACE}[0-9]{{3}})+|[0-9]{{1,15}}"
_NUMBER = rf"[-−]?(?:{_WHOLE})(?:\.[0-9]{{1,15}})?(?:[eE][-+]?[0-9]{{1,3}})?"
_UNIT = r"[^\s0-9][^0-9±]{0,15}?[0-9]?(?:/[^\s0-9±]{1,5}[0-9]?)?"


def _one(name: str) -> str:
    return rf"(?P<{name}>{_NUMBER})(?:{_SPACE}*(?P<{name}_unit>{_UNIT}))?"


_AMOUNT = re.compile(rf"{_one('first')}(?:{_SPACE}*(?P<joint>to|–|\.\.|±|\+/-){_SPACE}*{_one('second')})?")
_COMMA = re.compile(r"[0-9],[0-9]")


class NotAnAmount(ValueError):
    """The text is not a quantity; says what is wrong and how to mend it, in words for a technician."""

    def __init__(self, problem: str, mend: str) -> None:
        super().__init__(problem)
        self.problem = problem
        self.mend = mend


@dataclass(frozen=True, slots=True)
class Amount:
    """A quantity as somebody wrote it: one value, a range, or a value with a tolerance.

    ``low`` and ``high`` are equal for a single value. ``written`` keeps the author's own decimals.
    Equality is equality of size: ``5 µCi`` and ``185 kBq`` are the same amount.
    """

    written: str = field(compare=False)
    kind: str
    unit: str = field(compare=False)
    low: Quantity
    high: Quantity
    middle: Quantity = field(compare=False)

    def __hash__(self) -> int:
        return hash((self.kind, self.low, self.high))

    @property
    def is_single(self) -> bool:
        """Whether one value is meant, rather than a range or a tolerance."""
        return bool(self.low == self.high)

    @property
    def value(self) -> Quantity:
        """The single value, or the middle of a tolerance or range."""
        return self.middle

    def __str__(self) -> str:
        return self.written


def _number(text: str) -> Decimal:
    value = Decimal(re.sub(_SPACE, "", text).replace("−", "-"))
    if value and not SMALLEST <= abs(value) <= LARGEST:
        raise NotAnAmount(
            "the number is out of any range a bench can hold", "choose a unit that gives an ordinary number"
        )
    return value


def _no_unit(text: str, kind: str | None) -> NotAnAmount:
    example = KINDS[kind].example if kind else "2 m"
    return NotAnAmount(f"{text} has no unit", f"write the unit after the number, for example {example}")


def _written_like(kind: str | None) -> str:
    return f"write it like {KINDS[kind].example if kind else '2 m, 10 min, 4.5 kV or 185 kBq'}"


def _unit_kind(spelling: str, kind: str | None) -> str:
    """The kind meant by a unit's spelling; raises NotAnAmount when it cannot be the kind asked for."""
    kinds = KINDS_BY_SPELLING.get(spelling)
    if kinds is None:
        by_capitals = {known.casefold(): known for known in KINDS_BY_SPELLING}
        meant = by_capitals.get(spelling.casefold()) or {"C": "°C"}.get(spelling)
        advice = f"did you mean {meant}?" if meant else _written_like(kind)
        raise NotAnAmount(f"{spelling} is not a unit the handbook knows", advice)
    if kind is None:
        return kinds[0]
    if kind in kinds:
        return kind
    if kind == "temperature difference" and "temperature" in kinds:
        raise NotAnAmount(
            f"{spelling} is for a temperature, and this is a difference between two",
            "write the difference in K",
        )
    raise NotAnAmount(f"{spelling} is a unit of {kinds[0]}, and this is a {kind}", _written_like(kind))


def read_amount(text: str, kind: str | None = None) -> Amount:
    """The amount a person wrote, such as ``100 mm``, ``30 mm to 40 mm``, ``4.5 kV ± 0.2 kV``.

    Args:
        text: what was written.
        kind: the kind of quantity the place asks for; None takes any kind of the table.

    Raises:
        NotAnAmount: for anything else, at once, whatever the length of the text.

    >>> str(read_amount("5 µCi", "activity").value.to("kBq"))
    '185.0 kilobecquerel'
    """
    if len(text) > LONGEST_TEXT:
        raise NotAnAmount(
            f"this is too long for a quantity ({len(text)} characters)", "write a number and a unit"
        )
    return _read(text.strip(), kind)


@lru_cache(maxsize=4096)
def _read(text: str, kind: str | None) -> Amount:
    """The same, once for each text: most steps of a handbook take one of a dozen times."""
    match = _AMOUNT.fullmatch(text)
    if match is None:
        if _COMMA.search(text):
            raise NotAnAmount(
                f"{text} has a comma in its number", "write decimals with a point and thousands with a space"
            )
        raise NotAnAmount(
            f"{text or 'nothing'} is not a quantity", "write a number and a unit, for example 2 m"
        )
    first, second, joint = match["first"], match["second"], match["joint"]
    second_spelling = match["second_unit"] or match["first_unit"]
    first_spelling = match["first_unit"] or second_spelling
    if not first_spelling or not second_spelling:
        raise _no_unit(text, kind)
    its_kind = _unit_kind(first_spelling.strip(), kind)
    low = _quantity(first, first_spelling.strip(), its_kind)
    if not joint:
        return Amount(text, its_kind, first_spelling.strip(), low, low, low)
    return _spread(text, its_kind, first_spelling.strip(), low, joint, second, second_spelling.strip())


def _quantity(number: str, spelling: str, kind: str) -> Quantity:
    value = of_unit(float(_number(number)), unit_written(spelling, kind))
    return (
        value.to("K") if kind == "temperature" else value
    )  # 20 °C + 1 °C has no meaning; 293.15 K + 1 K has


def _spread(
    text: str, kind: str, spelling: str, first: Quantity, joint: str, second: str, second_spelling: str
) -> Amount:
    """A range or a tolerance, from its two halves."""
    if joint in ("±", "+/-"):
        if second_spelling == "%" and kind != "fraction":
            spread = abs(first) * float(_number(second)) / 100
        else:
            spread_kind = "temperature difference" if kind == "temperature" else kind
            spread = _quantity(second, second_spelling, _unit_kind(second_spelling, spread_kind))
        if spread.magnitude < 0:
            raise NotAnAmount(f"{text} has a tolerance below zero", "write the tolerance without a sign")
        return Amount(text, kind, spelling, first - spread, first + spread, first)
    high = _quantity(second, second_spelling, _unit_kind(second_spelling, kind))
    if high < first:
        raise NotAnAmount(f"{text} runs backwards", "write the smaller value first")
    return Amount(text, kind, spelling, first, high, (first + high) / 2)


def q(text: str) -> Quantity:
    """The single quantity in a text: ``q("10 nF")``. For code, docstrings and tests."""
    return read_amount(text).value


_ROUNDING = 1e-9
"""Room for float noise in comparisons: 0.1 m + 0.2 m is not over a limit of 0.3 m."""


def is_over(value: Quantity, limit: Quantity) -> bool:
    """Whether a value is above a limit by more than float noise. Raises UnlikeUnits for unlike kinds."""
    return bool(number_in(value, limit.units) > limit.magnitude + abs(limit.magnitude) * _ROUNDING)


def is_under(value: Quantity, limit: Quantity) -> bool:
    """Whether a value is below a limit by more than float noise. Raises UnlikeUnits for unlike kinds."""
    return bool(number_in(value, limit.units) < limit.magnitude - abs(limit.magnitude) * _ROUNDING)


def is_same(value: Quantity, other: Quantity) -> bool:
    """Whether two values agree but for float noise; False for unlike kinds."""
    return value.is_compatible_with(other) and not is_over(value, other) and not is_under(value, other)


_SPELLINGS = "|".join(re.escape(s) for s in sorted(KINDS_BY_SPELLING, key=len, reverse=True))
_IN_PROSE = re.compile(
    rf"(?<![\w.,/-]){_NUMBER}(?:{_SPACE}?(?:to|–|-){_SPACE}?{_NUMBER})?{_SPACE}?(?:{_SPELLINGS})(?![\w/²³])"
)


_DIGIT = re.compile("[0-9]")


def amounts_in(prose: str) -> Iterator[tuple[int, Amount]]:
    """Every quantity written in a sentence, with the position of its first character."""
    if not _DIGIT.search(prose):
        return  # as in most sentences, and much cheaper to see
    for match in _IN_PROSE.finditer(prose):
        try:
            yield match.start(), read_amount(re.sub(r"(?<=[0-9])-(?=[0-9])", "–", match.group()))
        except NotAnAmount:
            continue
