"""Systematic wrong edits of what practicals share: sources, supplies, rooms, kit, limits, the department."""

import re
from collections.abc import Iterator
from types import UnionType
from typing import Any, Literal, Union, get_args, get_origin

from clampstand.model.base import Definition, Entry
from clampstand.model.book import Book
from clampstand.reading.names import SHELVES, names_in
from mutation.edits import (
    Edit,
    Plain,
    Route,
    at,
    dates_pushed,
    prefixes_changed,
    put,
    quantities_scaled,
    scalars,
)

_COUNT = re.compile(r"[0-9]{1,6}")
_INTERVAL = re.compile(r"([1-9][0-9]{0,3}) (day|week|month|year)s?")
_OTHER = {"at_least": "at_most", "at_most": "at_least", "less_than": "more_than", "more_than": "less_than"}


def shared_edits(data: Plain, entry: Entry, book: Book) -> Iterator[Edit]:
    """Every edit of every sort of one shared entry."""
    yield from quantities_scaled(data)
    yield from prefixes_changed(data)
    yield from dates_pushed(data, book)
    yield from names_exchanged(data, entry, book)
    yield from words_toggled(data, entry)
    yield from counts_changed(data)
    yield from intervals_changed(data)
    yield from keys_removed(data)


def names_exchanged(data: Plain, entry: Entry, book: Book) -> Iterator[Edit]:
    """Each name of something else: misspelt, and exchanged for a neighbour on the same shelf."""
    for named in names_in(entry):
        if named.shelf not in SHELVES or named.at_key or at(data, named.route) != named.text:
            continue
        bent = named.text + "x"
        yield Edit("name misspelt", named.route, named.text, bent, put(data, named.route, bent))
        shelf = sorted(book.shelf(named.shelf))
        if named.text in shelf and len(shelf) > 1:
            other = shelf[(shelf.index(named.text) + 1) % len(shelf)]
            yield Edit("name exchanged", named.route, named.text, other, put(data, named.route, other))


def words_toggled(data: Plain, entry: Entry) -> Iterator[Edit]:
    """Each yes made no and the other way round, and each word of a closed list exchanged for each other."""
    for route, text in scalars(data):
        for other in _others(type(entry), route, text):
            yield Edit("word toggled", route, text, other, put(data, route, other))


def _others(kind: Any, route: Route, text: str) -> tuple[str, ...]:
    if text in ("yes", "no"):
        return ("no" if text == "yes" else "yes",)
    return tuple(word for word in _words_at(kind, route) if word != text)


def _words_at(kind: Any, route: Route) -> tuple[str, ...]:
    """The closed list a model allows at a route; nothing where any text may stand."""
    if get_origin(kind) is Literal:
        return tuple(str(word) for word in get_args(kind))
    if isinstance(kind, type) and issubclass(kind, Definition) and route:
        fields = {field.alias or name: field for name, field in kind.model_fields.items()}
        field = fields.get(str(route[0]))
        return _words_at(field.annotation, route[1:]) if field else ()
    if get_origin(kind) in (Union, UnionType, tuple, dict):
        inner = route[1:] if get_origin(kind) in (tuple, dict) and route else route
        return next((words for part in get_args(kind) if (words := _words_at(part, inner))), ())
    return ()


def counts_changed(data: Plain) -> Iterator[Edit]:
    """Each whole number ten times as large, and nought."""
    for route, text in scalars(data):
        if _COUNT.fullmatch(text):
            for now in (str(int(text) * 10), "0"):
                if now != text:
                    yield Edit("count changed", route, text, now, put(data, route, now))


def intervals_changed(data: Plain) -> Iterator[Edit]:
    """Each interval of the calendar ten times as long, and with years for months or days for months."""
    for route, text in scalars(data):
        match = _INTERVAL.fullmatch(text)
        if match:
            count, unit = int(match[1]), match[2]
            longer = {"day": "week", "week": "month", "month": "year", "year": "year"}[unit]
            for now in (f"{count * 10} {unit}s", f"{count} {longer}s"):
                if now.rstrip("s") != text.rstrip("s"):
                    yield Edit("interval changed", route, text, now, put(data, route, now))


def keys_removed(data: Plain, way: Route = ()) -> Iterator[Edit]:
    """Each citation, reading date and comparator of a limit left out, and each comparator turned round."""
    inner = at(data, way)
    parts = enumerate(inner) if isinstance(inner, list) else inner.items() if isinstance(inner, dict) else ()
    for key, value in parts:
        route = (*way, key)
        if key in ("citation", "read_on", "check_again_by"):
            yield Edit("citation removed", route, str(value), "", put(data, route, None))
        if key in _OTHER and isinstance(value, str):
            turned = put(put(data, route, None), (*way, _OTHER[str(key)]), value)
            yield Edit("limit turned round", route, str(key), _OTHER[str(key)], turned)
        yield from keys_removed(data, route)
