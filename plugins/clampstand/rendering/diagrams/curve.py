"""A small plot: curves, limits drawn across them with whose they are, and marks such as today."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from clampstand.findings import Layer
from clampstand.rendering.diagrams.svg import Point, along, drawing, label, tag
from clampstand.units import digits

_WIDTH, _HEIGHT = 640.0, 360.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 86.0, 24.0, 30.0, 64.0
_DASHES = ("none", "9 5", "2 4", "12 4 2 4")
"""Curves differ by their dashes, never by colour alone."""


@dataclass(frozen=True, slots=True)
class Axis:
    """An axis: what it is, its unit, and whether it goes by equal factors rather than equal steps."""

    name: str
    unit: str
    by_factors: bool = False

    @property
    def words(self) -> str:
        """The axis as its label says it."""
        return f"{self.name} ({self.unit})" if self.unit else self.name


@dataclass(frozen=True, slots=True)
class Line:
    """A curve: its name, and its points in the units of the axes."""

    name: str
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Ceiling:
    """A limit across the plot: its words, its value in the unit of the upright axis, and whose it is."""

    words: str
    value: float
    whose: Layer


@dataclass(frozen=True, slots=True)
class Mark:
    """One point set apart: today, or what was measured."""

    words: str
    at: Point


@dataclass(frozen=True, slots=True)
class Scale:
    """How values of one axis lie along the page."""

    low: float
    high: float
    start: float
    end: float
    by_factors: bool

    def at(self, value: float) -> float:
        """Where on the page a value lies; values beyond the axis lie at its end."""
        low, high, here = (self._even(v) for v in (self.low, self.high, max(self.low, min(value, self.high))))
        return self.start + (self.end - self.start) * (here - low) / (high - low)

    def _even(self, value: float) -> float:
        return math.log10(value) if self.by_factors else value

    @property
    def ticks(self) -> tuple[float, ...]:
        """Values worth a tick: decades by factors, else steps of 1, 2 or 5."""
        if self.by_factors:
            first, last = round(math.log10(self.low)), round(math.log10(self.high))
            each = max(1, math.ceil((last - first) / 6))
            return tuple(10.0**n for n in range(first, last + 1, each))
        step = _step(self.high - self.low)
        first = math.ceil(self.low / step - 1e-9)
        return tuple(step * n for n in range(first, math.floor(self.high / step + 1e-9) + 1))


def _step(span: float) -> float:
    """A step of 1, 2 or 5 times a power of ten that gives four to eight ticks."""
    rough = span / 6
    power = 10.0 ** math.floor(math.log10(rough))
    return next(m * power for m in (1, 2, 5, 10) if m * power >= rough * 0.999)


def _scale(values: Sequence[float], by_factors: bool, start: float, end: float) -> Scale:
    """A scale that holds all values: from nought by steps, or by whole decades."""
    if by_factors:
        low = 10.0 ** math.floor(math.log10(min(values)) + 1e-9)
        high = 10.0 ** math.ceil(math.log10(max(values)) - 1e-9)
        return Scale(low, high if high > low else low * 10, start, end, by_factors)
    low, high = min(0.0, *values), max(0.0, *values)
    step = _step(high - low or 1.0)
    return Scale(math.floor(low / step) * step, math.ceil(high / step) * step or step, start, end, by_factors)


def plot(
    title: str,
    across: Axis,
    upright: Axis,
    lines: Sequence[Line],
    ceilings: Sequence[Ceiling] = (),
    marks: Sequence[Mark] = (),
) -> str:
    """The plot as SVG. Every number drawn is said in its description.

    Raises:
        ValueError: there is no point to draw, or one cannot stand on an axis that goes by factors.
    """
    points = [p for line in lines for p in line.points] + [mark.at for mark in marks]
    xs, ys = [p[0] for p in points], [p[1] for p in points] + [c.value for c in ceilings]
    _refuse_what_cannot_be_drawn(xs, across)
    _refuse_what_cannot_be_drawn(ys, upright)
    x = _scale(xs, across.by_factors, _LEFT, _WIDTH - _RIGHT)
    y = _scale(ys, upright.by_factors, _HEIGHT - _BOTTOM, _TOP)
    body = [
        *_across(x, across),
        *_upright(y, upright),
        *(piece for n, line in enumerate(lines) for piece in _curve(line, x, y, n, len(lines))),
        *(piece for ceiling in ceilings for piece in _ceiling(ceiling, lines, x, y)),
        *(piece for mark in marks for piece in _marked(mark, lines[0], x, y)),
    ]
    says = _says(across, upright, lines, ceilings, marks, x, y)
    return drawing(title, says, body, _WIDTH, _HEIGHT, "curve")


def _refuse_what_cannot_be_drawn(values: Sequence[float], axis: Axis) -> None:
    if not values or not all(math.isfinite(v) for v in values):
        raise ValueError(f"nothing can be drawn along {axis.name}")
    if axis.by_factors and min(values) <= 0:
        raise ValueError(f"{axis.name} goes by factors, and a value is nought or less")


def printed(value: float) -> str:
    """A value of a plot, to three figures and without a tail of noughts.

    >>> printed(0.5), printed(2000.0), printed(1e-05)
    ('0.5', '2000', '10⁻⁵')
    """
    if value and not 1e-4 < abs(value) < 1e6:
        power = math.floor(math.log10(abs(value)) + 1e-9)
        factor = value / 10.0**power
        raised = "10" + str(power).translate(str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"))
        return raised if math.isclose(factor, 1) else f"{printed(round(factor, 2))} × {raised}"
    text = digits(round(value, 12), 3)
    return text.rstrip("0").rstrip(".") if "." in text else text


def _with_unit(value: float, axis: Axis) -> str:
    return f"{printed(value)}\u00a0{axis.unit}" if axis.unit else printed(value)


def _says(
    across: Axis,
    upright: Axis,
    lines: Sequence[Line],
    ceilings: Sequence[Ceiling],
    marks: Sequence[Mark],
    x: Scale,
    y: Scale,
) -> str:
    told = [
        f"Plot of {upright.words} against {across.words}.",
        f"Across: {', '.join(printed(t) for t in x.ticks)}.",
        f"Upright: {', '.join(printed(t) for t in y.ticks)}.",
    ]
    for line in lines:
        (x0, y0), (x1, y1) = line.points[0], line.points[-1]
        told.append(
            f"{line.name} goes from {_with_unit(y0, upright)} at {_with_unit(x0, across)} "
            f"to {_with_unit(y1, upright)} at {_with_unit(x1, across)}."
        )
    told += [f"{_ceiling_words(c)}: {_with_unit(c.value, upright)}." for c in ceilings]
    told += [f"{m.words}: {_with_unit(m.at[1], upright)} at {_with_unit(m.at[0], across)}." for m in marks]
    return " ".join(told)


def _ceiling_words(ceiling: Ceiling) -> str:
    return f"{ceiling.words} ({ceiling.whose.value})"


def _across(x: Scale, axis: Axis) -> list[str]:
    floor = _HEIGHT - _BOTTOM
    ticks = [tag("line", x1=x.at(t), y1=floor, x2=x.at(t), y2=floor + 6, stroke_width=1.5) for t in x.ticks]
    numbers = [label(printed(t), (x.at(t), floor + 22), 13, "middle") for t in x.ticks]
    name = label(axis.words, ((_LEFT + _WIDTH - _RIGHT) / 2, _HEIGHT - 12), 14, "middle")
    return [
        tag("line", x1=_LEFT, y1=floor, x2=_WIDTH - _RIGHT, y2=floor, stroke_width=1.5),
        *ticks,
        *numbers,
        name,
    ]


def _upright(y: Scale, axis: Axis) -> list[str]:
    ticks = [tag("line", x1=_LEFT - 6, y1=y.at(t), x2=_LEFT, y2=y.at(t), stroke_width=1.5) for t in y.ticks]
    numbers = [label(printed(t), (_LEFT - 10, y.at(t) + 4.5), 13, "end") for t in y.ticks]
    name = label(axis.words, (18, (_TOP + _HEIGHT - _BOTTOM) / 2), 14, "middle", turn=True)
    return [
        tag("line", x1=_LEFT, y1=_TOP, x2=_LEFT, y2=_HEIGHT - _BOTTOM, stroke_width=1.5),
        *ticks,
        *numbers,
        name,
    ]


def _curve(line: Line, x: Scale, y: Scale, which: int, of: int) -> list[str]:
    """A curve, and its name beside a sample of its dashes where there is more than one."""
    dashes = _DASHES[which % len(_DASHES)]
    drawn = tag(
        "polyline",
        points=along((x.at(a), y.at(b)) for a, b in line.points),
        stroke_width=2.5,
        stroke_dasharray=dashes,
        stroke_linejoin="round",
    )
    if of == 1:
        return [drawn]
    across = _LEFT + 12 + which * (_WIDTH - _LEFT - _RIGHT) / of
    sample = tag("line", x1=across, y1=14, x2=across + 34, y2=14, stroke_width=2.5, stroke_dasharray=dashes)
    return [drawn, sample, label(line.name, (across + 40, 19), 13)]


def _ceiling(ceiling: Ceiling, lines: Sequence[Line], x: Scale, y: Scale) -> list[str]:
    """A limit as a heavy line with its words and whose it is, at the end where the curves are further off."""
    at = y.at(ceiling.value)
    dashes = {Layer.LAW: "none", Layer.GUIDANCE: "14 5", Layer.LOCAL: "5 4"}.get(ceiling.whose, "2 3")
    words = f"{_ceiling_words(ceiling)}: {printed(ceiling.value)}"
    height = at + (18 if at - _TOP < 18 else -8)
    middle = (_LEFT + _WIDTH - _RIGHT) / 2
    near = [(x.at(a) > middle, abs(y.at(b) - height)) for line in lines for a, b in line.points]
    left_gap, right_gap = (
        min((gap for right, gap in near if right is side), default=1e9) for side in (False, True)
    )
    place = (_LEFT + 8, height) if left_gap > right_gap else (_WIDTH - _RIGHT - 4, height)
    return [
        tag("line", x1=_LEFT, y1=at, x2=_WIDTH - _RIGHT, y2=at, stroke_width=3.5, stroke_dasharray=dashes),
        label(words, place, 14, "start" if left_gap > right_gap else "end", bold=True),
    ]


def _marked(mark: Mark, along_line: Line, x: Scale, y: Scale) -> list[str]:
    """The mark with its words beside it, off the curve: right of it, or left where the page ends."""
    across, height = x.at(mark.at[0]), y.at(mark.at[1])
    left = across > _LEFT + 0.7 * (_WIDTH - _LEFT - _RIGHT)
    falling = along_line.points[0][1] > mark.at[1]
    place = (across - 12, height + (22 if falling else -10)) if left else (across + 12, height - 10)
    return [
        tag(
            "line",
            x1=across,
            y1=height,
            x2=across,
            y2=_HEIGHT - _BOTTOM,
            stroke_width=1,
            stroke_dasharray="3 3",
        ),
        tag("circle", cx=across, cy=height, r=6, fill="currentColor"),
        label(f"{mark.words}: {printed(mark.at[1])}", place, 14, "end" if left else "start", bold=True),
    ]
