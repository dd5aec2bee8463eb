"""Plain data become a definition, and everything pydantic says against it is said again in kind words."""

import types
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Annotated, Any, Generic, Literal, TypeVar, Union, get_args, get_origin

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from clampstand.findings import Finding, Route
from clampstand.model.base import Definition
from clampstand.reading.findings import MOST_FINDINGS, SCHEMA, listed, near, shown, stop
from clampstand.reading.sheet import Sheet
from clampstand.reading.walk import Plain

D = TypeVar("D", bound=Definition)

_PASSES = 6
"""How often a definition is tried with its misspelt keys put right; each pass looks one block deeper."""


@dataclass(frozen=True)
class Outcome(Generic[D]):
    """What became of one definition: itself, or what is wrong with it."""

    definition: D | None
    findings: tuple[tuple[Route, Finding], ...] = ()


@cache
def _adapter(kind: type[D]) -> TypeAdapter[D]:
    return TypeAdapter(kind)


def define(kind: type[D], data: "Plain | None", sheet: Sheet, at: Route = ()) -> Outcome[D]:
    """The definition that data describe.

    A key that is nearly right is put right for the time of looking, so that mistakes in its block are found
    in the same run; the definition is not used all the same.

    Args:
        kind: the class of the definition.
        data: the data, every scalar a text.
        sheet: the file, for the places.
        at: the route of the data in the file.
    """
    attempt = _Attempt(kind, data, sheet, at)
    for _ in range(_PASSES):
        try:
            definition = _adapter(kind).validate_python(attempt.data)
        except ValidationError as error:
            if not attempt.take_in(error):
                break
        else:
            return Outcome(None if attempt.told else definition, tuple(attempt.told.values()))
    return Outcome(None, tuple(attempt.told.values()))


@dataclass
class _Attempt(Generic[D]):
    """One definition on its way through the passes."""

    kind: type[D]
    data: "Plain | None"
    sheet: Sheet
    at: Route
    told: dict[tuple[Route, str], tuple[Route, Finding]] = field(default_factory=dict)
    renamed: dict[Route, str] = field(default_factory=dict)
    """Route with the right key → the key as it is written."""

    def take_in(self, error: ValidationError) -> bool:
        """Turn every error into a finding; whether a key was put right, so that another pass is worth it."""
        errors = error.errors(include_url=False)
        again = False
        for each in sorted(errors, key=lambda e: e["type"] != "extra_forbidden"):
            if len(self.told) >= MOST_FINDINGS:
                break
            if each["type"] == "extra_forbidden":
                again = self._unknown_key(each, errors) or again
            elif not self._is_echo(each):
                self._tell(each)
        return again

    def _is_echo(self, error: ErrorDetails) -> bool:
        """Whether an error only follows from another: pydantic does not count entries that are wrong."""
        if error["type"] == "too_short":
            return bool(len(error["input"]) >= error["ctx"]["min_length"])
        return error["type"] == "missing" and error["loc"] in self.renamed

    def _tell(self, error: ErrorDetails) -> None:
        """A finding for any error but an unknown key."""
        route, at_key = error["loc"], False
        if error["type"] == "missing":
            message = f"{route[-1]} is missing"
            found, mend = "", f"write {route[-1]} here"
            route, at_key = route[:-1], True
        else:
            if route and route[-1] == "[key]":
                route, at_key = route[:-1], True
            annotation = annotation_at(self.kind, error["loc"])
            message, mend = wording(error, annotation)
            found = error["input"] if isinstance(error["input"], str) else ""
        self._keep(route, at_key, message, mend, found)

    def _keep(self, route: Route, at_key: bool, message: str, mend: str, found: str = "") -> None:
        written = (*self.at, *self._as_written(route))
        stops = (fault for fault, finding in self.sheet.findings if finding.stops and (fault or not written))
        if any(fault == written[: len(fault)] for fault in stops):
            return  # the file itself is at fault there, and that has been said
        finding = stop(SCHEMA, self.sheet.place(written, at_key), message, mend, found)
        self.told.setdefault((written, message), (written, finding))

    def _as_written(self, route: Route) -> Route:
        return tuple(self.renamed.get(route[: n + 1], part) for n, part in enumerate(route))

    def _unknown_key(self, error: ErrorDetails, errors: list[ErrorDetails]) -> bool:
        """Tell an unknown key; where its name is nearly right, put it right and say so."""
        *around, key = error["loc"]
        block = _block(self.data, tuple(around))
        known = keys_of(annotation_at(self.kind, tuple(around)))
        missing = [
            str(e["loc"][-1]) for e in errors if e["type"] == "missing" and e["loc"][:-1] == tuple(around)
        ]
        written = block.keys() if block else ()
        meant = near(str(key), missing) or near(str(key), (name for name in known if name not in written))
        again = near(str(key), known)
        if meant:
            mend = f"did you mean {meant}?"
        elif again:
            mend = f"{again} is written here already; keep one of the two"
        else:
            mend = f"take it out; here belong {listed(known, 'and', most=40)}" if known else "take it out"
        self._keep(tuple(error["loc"]), True, f"{shown(str(key))} is not a key of this block", mend)
        return bool(meant) and block is not None and self._rename(tuple(around), str(key), meant)

    def _rename(self, around: Route, key: str, meant: str) -> bool:
        self.data = _with_key(self.data, around, key, meant)
        self.renamed[(*around, meant)] = key
        return True


def _block(data: Any, route: tuple[Any, ...]) -> Mapping[str, Plain] | None:
    """The block of keys at a route, if that is what stands there."""
    for part in route:
        if not isinstance(data, dict | list):
            return None
        try:
            data = data[part]
        except (KeyError, IndexError, TypeError):
            return None
    return data if isinstance(data, dict) else None


def _with_key(data: Any, route: Route, key: str, meant: str) -> Any:
    """A copy of the data in which one key has another name, and its old place in the order."""
    if not route:
        return {meant if name == key else name: value for name, value in data.items()}
    copy = data.copy()
    copy[route[0]] = _with_key(data[route[0]], route[1:], key, meant)
    return copy


def _bare(annotation: Any) -> Any:
    """An annotation without its extras and without its None."""
    while True:
        origin = get_origin(annotation)
        if origin is Annotated:
            annotation = get_args(annotation)[0]
        elif origin in (Union, types.UnionType):
            annotation = next(arg for arg in get_args(annotation) if arg is not types.NoneType)
        else:
            return annotation


def annotation_at(kind: Any, route: Route) -> Any:
    """What the definition expects at a route: a class of definition, a tuple, a choice of words, a type."""
    annotation = _bare(kind)
    for number, part in enumerate(route):
        if isinstance(annotation, type) and issubclass(annotation, Definition):
            fields = annotation.model_fields
            found = next((f for name, f in fields.items() if part in (name, f.alias)), None)
            annotation = found.annotation if found else None
        elif get_origin(annotation) is dict:
            annotation = get_args(annotation)[1 if route[number + 1 : number + 2] != ("[key]",) else 0]
            if route[number + 1 : number + 2] == ("[key]",):
                return _bare(annotation)
        elif get_origin(annotation) is tuple:
            annotation = get_args(annotation)[0]
        annotation = _bare(annotation)
    return annotation


def keys_of(annotation: Any) -> list[str]:
    """The keys a block may have."""
    if isinstance(annotation, type) and issubclass(annotation, Definition):
        return [each.alias or name for name, each in annotation.model_fields.items()]
    return []


def _required(annotation: Any) -> list[str]:
    if isinstance(annotation, type) and issubclass(annotation, Definition):
        return [each.alias or n for n, each in annotation.model_fields.items() if each.is_required()]
    return []


def _choices(annotation: Any) -> Iterator[str]:
    return (str(choice) for choice in get_args(annotation)) if get_origin(annotation) is Literal else iter(())


_BLOCK = ("model_type", "model_attributes_type", "dict_type", "mapping_type")
_LIST = ("tuple_type", "list_type")


def wording(error: ErrorDetails, annotation: Any) -> tuple[str, str]:
    """Message and mend for an error of pydantic's; none of its own words get through."""
    kind, context, written = error["type"], error.get("ctx", {}), error["input"]
    text = (shown(written) or "nothing") if isinstance(written, str) else "a list or a block"
    told = (f"{text} does not belong here", "see the description of this key")
    if kind == "clampstand":
        told = str(context["problem"]), str(context["mend"])
    elif kind == "literal_error":
        told = f"{text} cannot be written here", _choose(text, list(_choices(annotation)))
    elif kind in _BLOCK:
        told = "a block of keys belongs here", _how_a_block(annotation)
    elif kind in _LIST:
        told = "a list belongs here", "begin each entry on a line of its own with a hyphen and a space"
    elif kind == "too_short":
        told = "at least one entry belongs here", "write one"
    elif kind == "too_long":
        told = "there are too many entries here", f"keep {context['max_length']}"
    return told


def _how_a_block(annotation: Any) -> str:
    example = [f"{name}:" for name in (_required(annotation) or keys_of(annotation))[:4]]
    shape = f"such as {listed(example, 'and')}" if example else "each with its value"
    return f"write keys {shape} on lines of their own, indented below"


def _choose(text: str, choices: list[str]) -> str:
    allowed = f"write {listed(choices)}"
    meant = near(text, choices)
    return f"did you mean {meant}? Otherwise {allowed}" if meant else allowed
