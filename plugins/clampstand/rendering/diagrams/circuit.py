"""Circuit of a supply: what limits its current, what it feeds, and the lead that shorts it afterwards."""

import math
import textwrap
from dataclasses import dataclass

from clampstand.model.book import Book
from clampstand.model.practical import Circuit, Practical
from clampstand.rendering.diagrams.svg import along, drawing, label, tag
from clampstand.rendering.prose import in_a_row, unbroken
from clampstand.units import Amount

_WIDTH, _HEIGHT = 640.0, 262.0
_TOP, _BOTTOM = 78.0, 216.0
_LINE = 2.2
_HALF = 32.0
_INSIDE, _SERIES, _STORE, _SHORT, _FED = 230.0, 360.0, 440.0, 500.0, 580.0
"""Where along the rails each part stands."""
_LETTERS = 30
"""Letters of a line over what is fed: as many as fit beside the name of a supply."""


@dataclass(frozen=True, slots=True)
class Wiring:
    """What a circuit drawing shows, in words as printed. An empty text leaves the part out.

    Args:
        supply: the supply's name.
        voltage: the highest voltage used.
        inside: resistance built into the supply's output.
        through: series resistance outside it.
        feeds: what it feeds.
        stores: further capacitance connected.
        shorting: the lead that discharges it.
        alternating: whether it is a.c.
    """

    supply: str
    voltage: str
    feeds: str
    inside: str = ""
    through: str = ""
    stores: str = ""
    shorting: str = ""
    alternating: bool = False


def circuits_of(practical: Practical, book: Book) -> tuple[str, ...]:
    """A drawing of each circuit of a practical."""
    return tuple(circuit(practical.title, wiring_of(entry, practical, book)) for entry in practical.circuits)


def wiring_of(entry: Circuit, practical: Practical, book: Book) -> Wiring:
    """What the drawing of a circuit says, from the definitions."""
    item = book.kit.get(entry.supply)
    output = None if item is None else item.output
    through = _declared(entry.through, practical)
    built_in = None if output is None else output.output_resistance
    # A series resistance as large as the supply's own is its own, behind its protected terminal.
    is_built_in = (
        built_in is not None
        and entry.through in practical.numbers
        and (practical.numbers[entry.through].value == built_in)
    )
    shorting = (book.kit[i].name for i in sorted(practical.items) if i in book.kit and book.kit[i].discharges)
    return Wiring(
        supply=entry.supply if item is None else item.name,
        voltage=_declared(entry.voltage, practical),
        feeds=in_a_row([book.kit[i].name if i in book.kit else i for i in entry.feeds]),
        inside=through if is_built_in else "",
        through="" if is_built_in else through,
        stores=_declared(entry.stores, practical),
        shorting=next(shorting, ""),
        alternating=output is not None and output.current == "ac",
    )


def _as_printed(amount: Amount | None) -> str:
    return "" if amount is None else unbroken(str(amount))


def _declared(name: str | None, practical: Practical) -> str:
    """A declared number as printed; a name that is none of them prints nothing."""
    number = practical.numbers.get(name or "")
    return _as_printed(None if number is None else number.value)


def circuit(title: str, wiring: Wiring) -> str:
    """The circuit as SVG."""
    body = [
        *_supply(wiring),
        *_top_rail([x for x, text in ((_INSIDE, wiring.inside), (_SERIES, wiring.through)) if text]),
        *_resistor(_INSIDE, wiring.inside, "inside"),
        *_resistor(_SERIES, wiring.through, "in series"),
        *_store(wiring.stores),
        *_shorting(wiring.shorting),
        *_fed(wiring.feeds),
    ]
    return drawing(f"Circuit: {title}", _says(wiring), body, _WIDTH, _HEIGHT, "circuit")


def _says(w: Wiring) -> str:
    parts = [f"{w.supply}, {_current(w)}, {w.voltage} at most"]
    parts += [f"through {w.inside} inside the supply"] if w.inside else []
    parts += [f"through {w.through} in series"] if w.through else []
    parts += [f"feeds {w.feeds}"]
    parts += [f"with {w.stores} connected across it"] if w.stores else []
    parts += [f"{w.shorting}, put across it only when the supply is off"] if w.shorting else []
    return "; ".join(parts) + "."


def _current(w: Wiring) -> str:
    return "a.c." if w.alternating else "d.c."


def _wire(*points: tuple[float, float]) -> str:
    return tag("polyline", points=along(points), stroke_width=_LINE)


def _supply(w: Wiring) -> list[str]:
    """The supply's box with its source, and the bottom rail that leaves it."""
    x, y = 70.0, (_TOP + _BOTTOM) / 2
    wave = [(x - 14 + i * 1.4, y - 8 * math.sin(i * math.pi / 10)) for i in range(21)]
    inner = [_wire(*wave)] if w.alternating else [_wire((x - 13, y - 6), (x + 13, y - 6)), *_dashes(x, y + 6)]
    return [
        tag("rect", x=20, y=_TOP - 38, width=270 if w.inside else 180, height=184, rx=6, stroke_width=1.5),
        label(w.supply, (20, 22), 15, bold=True),
        tag("circle", cx=x, cy=y, r=25, stroke_width=_LINE),
        *inner,
        _wire((x, y - 25), (x, _TOP)),
        _wire((x, y + 25), (x, _BOTTOM), (_FED, _BOTTOM), (_FED, y + 40)),
        label(_current(w), (x + 36, y - 4), 14),
        label(f"{w.voltage} at most", (x + 36, y + 16), 14, bold=True),
        *([] if w.alternating else [label("+", (x + 8, y - 34), 18), label("−", (x + 8, y + 46), 18)]),
    ]


def _dashes(x: float, y: float) -> list[str]:
    return [_wire((x + start, y), (x + start + 7, y)) for start in (-13, -3.5, 6)]


def _top_rail(gaps: list[float]) -> list[str]:
    """The top rail, open where a resistor stands in it, and down to what is fed."""
    starts = [70.0, *(x + _HALF for x in gaps)]
    ends = [*(x - _HALF for x in gaps), _FED]
    rails = [_wire((a, _TOP), (b, _TOP)) for a, b in zip(starts, ends, strict=True)]
    return [*rails, _wire((_FED, _TOP), (_FED, (_TOP + _BOTTOM) / 2 - 40))]


def _resistor(x: float, text: str, where: str) -> list[str]:
    if not text:
        return []
    return [
        tag("rect", x=x - _HALF, y=_TOP - 9, width=2 * _HALF, height=18, stroke_width=_LINE),
        label(text, (x, _TOP - 17), 15, "middle", bold=True),
        label(where, (x, _TOP + 26), 13, "middle"),
    ]


def _store(text: str) -> list[str]:
    """A capacitance across what is fed."""
    if not text:
        return []
    y = (_TOP + _BOTTOM) / 2
    return [
        _wire((_STORE, _TOP), (_STORE, y - 6)),
        _wire((_STORE, y + 6), (_STORE, _BOTTOM)),
        _wire((_STORE - 18, y - 6), (_STORE + 18, y - 6)),
        _wire((_STORE - 18, y + 6), (_STORE + 18, y + 6)),
        label(text, (_STORE - 24, y + 5), 14, "end", bold=True),
    ]


def _shorting(name: str) -> list[str]:
    """The shorting lead, drawn broken: it is not part of the circuit while the supply is on."""
    if not name:
        return []
    ends = [tag("circle", cx=_SHORT, cy=y, r=5, fill="currentColor") for y in (_TOP, _BOTTOM)]
    lead = tag("line", x1=_SHORT, y1=_TOP, x2=_SHORT, y2=_BOTTOM, stroke_width=_LINE, stroke_dasharray="7 5")
    return [*ends, lead, label(f"{name}: only when off", (_WIDTH - 10, _BOTTOM + 28), 14, "end")]


def _fed(names: str) -> list[str]:
    """What is fed, and over it as many lines as its names take."""
    y = (_TOP + _BOTTOM) / 2
    lines = [(line, 22.0 + 19 * i) for i, line in enumerate(textwrap.wrap(names, _LETTERS))]
    under = lines[-1][1] + 6 if lines else _TOP
    return [
        tag("rect", x=_FED - 34, y=y - 40, width=68, height=80, rx=4, stroke_width=_LINE),
        *(label(line, (_WIDTH - 10, at), 15, "end", bold=True) for line, at in lines),
        tag("line", x1=_FED, y1=under, x2=_FED, y2=_TOP - 6, stroke_width=1, stroke_dasharray="2 4"),
    ]
