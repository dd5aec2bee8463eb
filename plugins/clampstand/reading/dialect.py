"""A schema as pydantic writes it becomes one in the dialect of JSON schema that most editors know."""

from typing import Any

Schema = dict[str, Any]

DIALECT = "http://json-schema.org/draft-07/schema#"

_TEXT = {"type": ["string", "number", "boolean"]}
"""The reader takes every scalar as text; an editor has read ``version: 1`` as a number already."""


def in_draft_7(schema: Any) -> Any:
    """The same schema in draft 7, without defaults, titles and nulls, which help nobody who types."""
    if isinstance(schema, list):
        return [in_draft_7(part) for part in schema]
    if not isinstance(schema, dict):
        return schema
    if schema == {"type": "string"}:
        return dict(_TEXT)
    kept = {key: value for key, value in schema.items() if key not in ("default", "properties", "$ref")}
    if isinstance(kept.get("title"), str):
        del kept["title"]
    said = _each(_with_ids_as_keys(_without_null(kept)))
    if "properties" in schema:
        said["properties"] = {name: in_draft_7(each) for name, each in schema["properties"].items()}
    if "$ref" not in schema:
        return said
    # Draft 7 overlooks whatever stands beside a reference.
    return {"allOf": [{"$ref": schema["$ref"]}], **said} if said else {"$ref": schema["$ref"]}


def _each(schema: Schema) -> Schema:
    return {key: value if key == "enum" else in_draft_7(value) for key, value in schema.items()}


def _without_null(schema: Schema) -> Schema:
    """A key without a value is refused by the reader, whatever the definition does without the key."""
    choices = [each for each in schema.get("anyOf", ()) if each != {"type": "null"}]
    rest = {key: value for key, value in schema.items() if key != "anyOf"}
    if len(choices) != 1:
        return {**rest, "anyOf": choices} if choices else rest
    (alone,) = choices
    if "$ref" in alone:
        return {**rest, "allOf": [alone]}
    return {**_without_null(alone), **rest}


def _with_ids_as_keys(schema: Schema) -> Schema:
    said = dict(schema)
    if "patternProperties" in said:
        ((pattern, values),) = said.pop("patternProperties").items()
        said["additionalProperties"] = values
        said["propertyNames"] = {"pattern": pattern, **said.get("propertyNames", {})}
    if "prefixItems" in said:
        said["items"] = said.pop("prefixItems")
    return said
