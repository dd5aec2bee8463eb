"""Systematic wrong edits of a practical, made from the model itself, one at a time.

The data are plain: texts, lists and blocks, as the YAML has them. Every edit is a whole new copy, so that the
definition goes through the same door as one a person wrote.
"""

import copy
import datetime as dt
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Any, TypeAlias

from clampstand.model.book import Book
from clampstand.model.practical import PHASES, Practical
from clampstand.model.step import Step
from clampstand.reading.names import SHELVES, names_in
from clampstand.units import KINDS, NotAnAmount, digits, read_amount

Plain: TypeAlias = Any
Route: TypeAlias = tuple[str | int, ...]

TELLING = frozenset({"do", "by", "takes", "name", "warn", "room", "unattended"})
"""What a step says without changing anything that can hurt."""
CHANGING = tuple(
    sorted((field.alias or name) for name, field in Step.model_fields.items() if name not in TELLING)
)
FACTORS = (0.001, 0.1, 10, 1000)


@dataclass(frozen=True)
class Edit:
    """One edit: what sort it is, where, and what stood there before and after."""

    sort: str
    where: Route
    was: str
    now: str
    data: Plain

    @property
    def address(self) -> str:
        """Where, as one line: ``run/3/holds_with``."""
        return "/".join(str(part) for part in self.where)

    def __str__(self) -> str:
        return f"{self.sort} {self.address}: {self.was!r} → {self.now!r}"


def at(data: Plain, route: Route) -> Plain:
    """The value at a route; a single text counts as the list of itself."""
    for part in route:
        if isinstance(data, str):
            return data
        data = data[part]
    return data


def put(data: Plain, route: Route, value: Plain) -> Plain:
    """The data with another value at a route; None takes the key or element away.

    Only what lies on the way is copied: most edits are dropped from a sample unread.
    """
    part, *further = route
    if further and isinstance(data[part], str):
        further = []  # ``touches: plates`` for ``touches: [plates]``
    copied = copy.copy(data)
    if further:
        copied[part] = put(data[part], tuple(further), value)
    elif value is None:
        del copied[part]
    else:
        copied[part] = value
    return copied


def scalars(data: Plain, route: Route = ()) -> Iterator[tuple[Route, str]]:
    """Every text of the data with its route."""
    if isinstance(data, str):
        yield route, data
    elif isinstance(data, list):
        for number, part in enumerate(data):
            yield from scalars(part, (*route, number))
    else:
        for key, part in data.items():
            yield from scalars(part, (*route, key))


def _steps(data: Plain) -> Iterator[tuple[Route, Plain]]:
    for phase in PHASES:
        for index, step in enumerate(data.get(phase, [])):
            yield (phase, index), step


def _changes(step: Plain) -> list[str]:
    return [key for key in step if key in CHANGING]


def steps_emptied(data: Plain) -> Iterator[Edit]:
    """Each step that changes something keeps its words and minutes and changes nothing."""
    for route, step in _steps(data):
        if _changes(step):
            bare = {key: value for key, value in step.items() if key in TELLING}
            yield Edit("step emptied", route, step["do"], "", put(data, route, bare))


def steps_swapped(data: Plain) -> Iterator[Edit]:
    """Each pair of neighbouring steps that both change something, the other way round."""
    for phase in PHASES:
        steps = data.get(phase, [])
        for index in range(len(steps) - 1):
            first, second = steps[index], steps[index + 1]
            if _changes(first) and _changes(second):
                swapped = [*steps[:index], second, first, *steps[index + 2 :]]
                yield Edit(
                    "steps swapped", (phase, index), first["do"], second["do"], put(data, (phase,), swapped)
                )


def words_left_out(data: Plain) -> Iterator[Edit]:
    """Each word of each step that changes something, left out alone."""
    for route, step in _steps(data):
        for key in _changes(step):
            yield Edit("word left out", (*route, key), str(step[key]), "", put(data, (*route, key), None))


def _quantities(data: Plain) -> Iterator[tuple[Route, str, str]]:
    """Every quantity outside sentences, with its kind."""
    for route, text in scalars(data):
        if route[0] in ("search", "topics") or route[-1] in ("do", "because", "note", "see", "here"):
            continue
        try:
            amount = read_amount(text)
        except NotAnAmount:
            continue
        if amount.is_single:
            yield route, text, amount.kind


_NUMBER = re.compile(r"[-−]?[0-9][0-9\s.]*(?:[eE][-+]?[0-9]+)?")


def quantities_scaled(data: Plain) -> Iterator[Edit]:
    """Each quantity a thousandth, a tenth, ten times and a thousand times as large."""
    for route, text, kind in _quantities(data):
        amount = read_amount(text, kind)
        number, unit = _NUMBER.match(text), amount.unit
        if number is None or kind == "temperature":
            continue
        size = float("".join(number.group().replace("−", "-").split()))
        for factor in FACTORS if size else ():  # nothing is nothing, however often
            now = f"{size * factor:.12g} {unit}"
            yield Edit("quantity scaled", route, text, now, put(data, route, now))


_PREFIXES = ("n", "µ", "m", "k", "M", "G", "")


def prefixes_changed(data: Plain) -> Iterator[Edit]:
    """Each unit with every other prefix that its kind knows."""
    for route, text, kind in _quantities(data):
        unit = read_amount(text, kind).unit
        stems = [
            unit[len(p) :]
            for p in _PREFIXES
            if p and unit.startswith(p) and unit[len(p) :] in KINDS[kind].written
        ]
        stem = stems[0] if stems else unit
        for prefix in _PREFIXES:
            other = prefix + stem
            if other != unit and other in KINDS[kind].written:
                now = text[: text.rindex(unit)] + other
                yield Edit("prefix changed", route, text, now, put(data, route, now))


def protection_dropped(data: Plain, book: Book) -> Iterator[Edit]:
    """Each protective item left out where it is put on, and left out of the kit list."""
    worn = {item for item, of_kit in book.kit.items() if of_kit.worn}
    for route, step in _steps(data):
        for who, items in step.get("puts_on", {}).items():
            listed = [items] if isinstance(items, str) else items
            for item in set(listed) & worn:
                rest = [one for one in listed if one != item]
                where = (*route, "puts_on", who)
                left = put(data, where, rest) if rest else put(data, where, None)
                yield Edit("protection dropped", where, item, "", left)
    for index, line in enumerate(data.get("kit", [])):
        if line["item"] in worn:
            yield Edit(
                "protection dropped", ("kit", index), line["item"], "", put(data, ("kit", index), None)
            )


def supplies_exchanged(data: Plain, book: Book) -> Iterator[Edit]:
    """Each supply exchanged everywhere for each other supply that can drive more current."""
    supplies = {item: of_kit.output for item, of_kit in book.kit.items() if of_kit.output}
    for line in data.get("kit", []):
        mine = supplies.get(line["item"])
        for other, its in supplies.items():
            if mine and its.short_circuit_current.high > mine.short_circuit_current.high:
                text = _renamed(data, line["item"], other)
                yield Edit("supply exchanged", ("kit",), line["item"], other, text)


def _renamed(data: Plain, name: str, other: str) -> Plain:
    """The data with a name exchanged wherever it stands whole, in keys, values and sentences."""
    whole = re.compile(rf"(?<![\w.-]){re.escape(name)}(?![\w-]|\.\w)")
    if isinstance(data, str):
        return whole.sub(other, data)
    if isinstance(data, list):
        return [_renamed(part, name, other) for part in data]
    return {whole.sub(other, key): _renamed(part, name, other) for key, part in data.items()}


_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


def dates_pushed(data: Plain, book: Book) -> Iterator[Edit]:
    """Each date moved ten years back and ten years on."""
    for route, text in scalars(data):
        if _DATE.fullmatch(text):
            day = dt.date.fromisoformat(text)
            for years in (-10, 10):
                now = (day + dt.timedelta(days=round(years * 365.25))).isoformat()
                yield Edit("date pushed", route, text, now, put(data, route, now))


def references_bent(data: Plain, book: Book, practical: Practical) -> Iterator[Edit]:
    """Each name of something else: misspelt, and exchanged for a neighbour on the same shelf."""
    seen: set[Route] = set()
    for named in names_in(practical):
        if named.shelf == "quote" or named.at_key or named.route in seen:
            continue
        seen.add(named.route)
        if at(data, named.route) != named.text:
            continue
        yield Edit(
            "name misspelt",
            named.route,
            named.text,
            named.text + "x",
            put(data, named.route, named.text + "x"),
        )
        if named.shelf in SHELVES:
            shelf = sorted(book.shelf(named.shelf))
            other = shelf[(shelf.index(named.text) + 1) % len(shelf)] if named.text in shelf else ""
            if other and other != named.text:
                yield Edit("name exchanged", named.route, named.text, other, put(data, named.route, other))


def citations_removed(data: Plain) -> Iterator[Edit]:
    """Each citation of a declared number or expectation left out."""
    for part in ("numbers", "expect"):
        entries = data.get(part, {})
        keys: Iterable[str | int] = entries if isinstance(entries, dict) else range(len(entries))
        for key in keys:
            if "source" in entries[key]:
                route = (part, key, "source")
                yield Edit("citation removed", route, entries[key]["source"], "", put(data, route, None))


def all_edits(data: Plain, practical: Practical, book: Book) -> Iterator[Edit]:
    """Every edit of every sort."""
    plain: tuple[Callable[[Plain], Iterator[Edit]], ...] = (
        steps_emptied,
        steps_swapped,
        words_left_out,
        quantities_scaled,
        prefixes_changed,
        citations_removed,
    )
    for make in plain:
        yield from make(data)
    yield from protection_dropped(data, book)
    yield from supplies_exchanged(data, book)
    yield from dates_pushed(data, book)
    yield from references_bent(data, book, practical)


__all__ = ["Edit", "Plain", "all_edits", "at", "digits", "put", "scalars"]
