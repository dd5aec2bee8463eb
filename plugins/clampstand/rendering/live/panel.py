"""A panel of live numbers: its inputs, its results, and the table beside it that needs no browser."""

import itertools
import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from clampstand.limits import keeps
from clampstand.model.limit import Limit
from clampstand.rendering.live.parts import (
    Ask,
    Asked,
    AskedDay,
    Choice,
    Data,
    Inputs,
    Of,
    in_one,
    limit_data,
    over,
)
from clampstand.units import (
    KINDS,
    Formula,
    OutOfRange,
    Quantity,
    joined,
    ladder,
    quantity,
    shown_best,
)
from clampstand.units.printing import Towards


@dataclass(frozen=True, slots=True)
class Result:
    """One live number.

    Args:
        title: what it is, in words.
        value: the formula it comes from.
        kind: its kind of quantity.
        figures: how many figures are printed.
        towards: where its rounding leans, so that it errs on the safe side.
        units: the units its size may choose from, smallest first; none leaves it those of its kind.
        limits: limits it may break. It says so when it does, and says nothing when it does not.
    """

    title: str
    value: Of
    kind: str
    figures: int = 2
    towards: Towards = "up"
    units: tuple[str, ...] = ()
    limits: tuple[Limit, ...] = ()

    def quantity(self, inputs: Inputs) -> Quantity:
        """Its value."""
        unit = self.value.value_unit
        return quantity(self.value.number(unit, inputs), unit)

    def printed(self, value: Quantity) -> str:
        """A value of it as a page prints it."""
        return shown_best(value, self.kind, self.figures, self.towards, self.units)

    def broken(self, value: Quantity) -> tuple[str, ...]:
        """What is said of each limit that a value of it breaks."""
        return tuple(over(limit) for limit in self.limits if not keeps(value, limit))

    def data(self) -> Data:
        """The same for the browser."""
        unit = self.value.value_unit
        written = KINDS[self.kind].written
        return {
            "value": self.value.data(unit),
            "units": [[one, in_one(unit, written[one])] for one in self.units or ladder(self.kind)],
            "title": self.title,
            "figures": self.figures,
            "towards": self.towards,
            "limits": [limit_data(limit, unit) for limit in self.limits],
        }


@dataclass(frozen=True, slots=True)
class Row:
    """A row of the table: what was varied, each result as printed, and whether that breaks a limit."""

    varied: str
    cells: tuple[tuple[str, bool], ...]


@dataclass(frozen=True)
class Panel:
    """A panel on a page.

    Args:
        id: what it is for, unlike any other panel of its page.
        title: what may be tried.
        asked: its inputs.
        results: its numbers.
        varied: the input the table varies, and what it is varied over.
        fixed: what else goes into it, in words, with where it comes from.
        note: what else to know.
    """

    id: str
    title: str
    asked: tuple[Ask, ...]
    results: tuple[Result, ...]
    varied: tuple[Ask, tuple[float, ...]]
    fixed: tuple[str, ...] = ()
    note: str = ""

    @property
    def start(self) -> dict[str, float]:
        """The inputs as they stand to begin with: those of the practical on the department's day."""
        return {ask.name: float(ask.start) for ask in self.asked}

    @property
    def others(self) -> tuple[str, ...]:
        """What the table does not vary, as it stands in the table."""
        rest = (ask for ask in self.asked if ask is not self.varied[0])
        return tuple(f"{ask.label.lower()} {ask.said(ask.start)}" for ask in rest)

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """The table."""
        ask, values = self.varied
        return tuple(self._row(ask, value) for value in values)

    def _row(self, ask: Ask, value: float) -> Row:
        inputs = self.start | {ask.name: value}
        beyond = isinstance(ask, Asked) and ask.breaks(value)
        worked = ((result, result.quantity(inputs)) for result in self.results)
        cells = ((result.printed(number), bool(result.broken(number))) for result, number in worked)
        return Row(ask.said(value) + (" *" if beyond else ""), tuple(cells))

    @property
    def beyond(self) -> tuple[str, ...]:
        """What is said of the limits, where a row of the table breaks one."""
        starred = any(over or row.varied.endswith("*") for row in self.rows for _, over in row.cells)
        return tuple(over(limit) for limit in self.limits) if starred else ()

    @property
    def limits(self) -> tuple[Limit, ...]:
        """Every limit that something here may break, each once."""
        of_inputs = (ask.limit for ask in self.asked if isinstance(ask, Asked) and ask.limit)
        of_results = (limit for result in self.results for limit in result.limits)
        return tuple({limit.spot: limit for limit in (*of_inputs, *of_results)}.values())

    @property
    def json(self) -> str:
        """What the browser needs, as one line of JSON, the same bytes for the same panel."""
        data = {
            "inputs": [_ask_data(ask) for ask in self.asked],
            "results": [result.data() for result in self.results],
        }
        return json.dumps(data, ensure_ascii=False, allow_nan=False, separators=(",", ":"), sort_keys=True)

    def formulae(self) -> tuple[Formula[Any], ...]:
        """Every formula it uses."""
        return tuple(formula for result in self.results for formula in result.value.formulae())

    def proved(self) -> "Panel":
        """Itself, once every result has a finite value at every corner of what may be asked.

        Raises:
            OutOfRange: it has none somewhere.
        """
        names = [ask.name for ask in self.asked]
        for corner in itertools.product(*(ask.ends for ask in self.asked)):
            inputs: Mapping[str, float] = dict(zip(names, corner, strict=True))
            for result in self.results:
                try:
                    result.value.number(result.value.value_unit, inputs)
                except (ArithmeticError, ValueError) as reason:
                    where = f"{self.id}: {result.title} has no value at {inputs}"
                    raise OutOfRange(f"{where}: {reason}") from None
        return self


def _ask_data(ask: Ask) -> Data:
    data: dict[str, Any] = {"name": ask.name, "label": ask.label}
    if isinstance(ask, Choice):
        return data | {"type": "choice"}
    low, high = ask.ends
    data |= {"low": low, "high": high, "between": f"between {ask.said(low)} and {ask.said(high)}"}
    if isinstance(ask, AskedDay):
        return data | {"type": "day"}
    limits = [limit_data(ask.limit, ask.unit)] if ask.limit else []
    return data | {"type": "number", "unit": joined("", ask.spelling), "limits": limits}
