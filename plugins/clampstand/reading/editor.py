"""JSON schemas of every kind of file, for editors that complete and explain while somebody types.

They are made from the definitions themselves. An editor is told less than the reader checks: a schema that
finds nothing is no promise that ``clampstand check`` finds nothing.
"""

import ast
import inspect
import json
import textwrap
from collections.abc import Iterable, Mapping
from itertools import pairwise

from pydantic import TypeAdapter

from clampstand.model.base import Definition, Entry
from clampstand.model.book import Book
from clampstand.model.department import Department
from clampstand.model.limit import Pack
from clampstand.model.people import CODE, Person
from clampstand.reading.dialect import DIALECT, Schema, in_draft_7
from clampstand.reading.names import NAMED, NAMED_BY_KEY, OWN_KIT, SHELVES
from clampstand.reading.reader import (
    DEPARTMENT_FILE,
    FILE_EACH,
    MANY_A_FILE,
    OF_THE_DEPARTMENT,
    PACKS,
    REFERENCE,
)

KNOWN_IDS = "known-ids.schema.json"
"""The one file that changes with the content; all others change with the code alone."""

_ID = "^[A-Za-z][A-Za-z0-9.-]{0,79}$"


def schema_files(book: Book, more: Mapping[str, Iterable[str]]) -> Mapping[str, str]:
    """The schemas by file name, ready to be written.

    Args:
        book: the content whose ids are offered.
        more: other words a definition may name, as ``rules``, and what there is of each.
    """
    made = {KNOWN_IDS: _known_ids(book, more)}
    for pattern, kind, is_map in kinds_of_file():
        made[schema_name(pattern)] = _of_file(kind, is_map)
    return {
        name: json.dumps(schema, ensure_ascii=False, indent=1, sort_keys=True) + "\n"
        for name, schema in sorted(made.items())
    }


def kinds_of_file() -> tuple[tuple[str, type[Entry], bool], ...]:
    """Every kind of YAML file: which files, what they hold, and whether they map ids to it."""
    return (
        (DEPARTMENT_FILE, Department, False),
        *((f"{folder}/*.yml", kind, False) for folder, kind in FILE_EACH.items()),
        *((f"{folder}/*.yml", kind, True) for folder, kind in MANY_A_FILE.items()),
        *((file, kind, True) for file, kind in {**OF_THE_DEPARTMENT, **REFERENCE}.items()),
        (f"{PACKS}/*.yml", Pack, False),
    )


def schema_name(files: str) -> str:
    """What the schema of a kind of file is called: ``kit.schema.json``, ``department-rooms.schema.json``."""
    return files.removesuffix(".yml").removesuffix("/*").replace("/", "-") + ".schema.json"


def _known_ids(book: Book, more: Mapping[str, Iterable[str]]) -> Schema:
    ids: dict[str, Iterable[str]] = {shelf: book.shelf(shelf) for shelf in SHELVES}
    ids["limits"] = {limit.key for pack in book.packs.values() for limit in pack.limits}
    offered = {name: sorted(known) for name, known in (ids | dict(more)).items()}
    choices: Schema = {name: {"enum": known} if known else {"not": {}} for name, known in offered.items()}
    return {"$schema": DIALECT, "$defs": choices}


def _of_file(kind: type[Entry], is_map: bool) -> Schema:
    schema = TypeAdapter(kind).json_schema()
    definitions = {**schema.pop("$defs", {}), kind.__name__: schema}
    classes = {each.__name__: each for each in _all_kinds(Definition)}
    for name, definition in definitions.items():
        _explain(classes[name], definition)
    plain = {name: in_draft_7(definition) for name, definition in definitions.items()}
    top: Schema = {"$ref": f"#/$defs/{kind.__name__}"}
    if is_map:
        ids = {"pattern": f"^{CODE.pattern}$" if kind is Person else _ID}
        top = {"type": "object", "propertyNames": ids, "additionalProperties": top}
    return {"$schema": DIALECT, **top, "$defs": plain}


def _all_kinds(kind: type[Definition]) -> Iterable[type[Definition]]:
    for each in kind.__subclasses__():
        yield each
        yield from _all_kinds(each)


def _explain(kind: type[Definition], schema: Schema) -> None:
    """Adds what pydantic does not know: the words under each field, and the ids there are to choose from."""
    words = _words_under_fields(kind)
    fields = schema.get("properties", {})
    for key, before in fields.items():
        name = next(name for name, each in kind.model_fields.items() if key in (name, each.alias))
        shelf = NAMED.get((kind, name), _BY_OTHER_FLOORS.get((kind.__name__, name), ""))
        fields[key] = of_field = _offered(before, shelf)
        if (kind, name) in NAMED_BY_KEY:
            of_field["propertyNames"] = _choice(NAMED_BY_KEY[kind, name], {"pattern": _ID})
        if name in words:
            of_field["description"] = words[name]


_BY_OTHER_FLOORS = {("AllowedException", "rule"): "rules", ("Expectation", "compute"): "calculators"}


def _words_under_fields(kind: type[Definition]) -> Mapping[str, str]:
    """Field → the text that stands under it in the source, of the class and those it extends."""
    words: dict[str, str] = {}
    for each in reversed(kind.__mro__):
        if not issubclass(each, Definition):
            continue
        body = ast.parse(textwrap.dedent(inspect.getsource(each))).body[0]
        statements = body.body if isinstance(body, ast.ClassDef) else []
        for field, after in pairwise(statements):
            if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name):
                match after:
                    case ast.Expr(ast.Constant(str(text))):
                        words[field.target.id] = " ".join(inspect.cleandoc(text).split())
    return words


def _offered(schema: Schema, shelf: str) -> Schema:
    """A field's schema that offers the ids of a shelf where a name stands in it. A new id is still taken."""
    if shelf not in (*SHELVES, OWN_KIT, "limits", "rules", "calculators") or "$ref" in schema:
        return schema
    if schema.get("type") == "string":
        return _choice(shelf, schema)
    offered = dict(schema)
    for inner in ("items", "additionalProperties"):
        if isinstance(schema.get(inner), dict):
            offered[inner] = _offered(schema[inner], shelf)
    if "anyOf" in schema:
        offered["anyOf"] = [_offered(each, shelf) for each in schema["anyOf"]]
    return offered


def _choice(shelf: str, plain: Schema) -> Schema:
    name = "kit" if shelf == OWN_KIT else shelf
    return {"anyOf": [{"$ref": f"{KNOWN_IDS}#/$defs/{name}"}, plain]}
