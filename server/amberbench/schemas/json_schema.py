"""JSON Schema of what the API answers, for its OpenAPI document, from the descriptions of replies and documents.

Requests are described by marshmallow's schemas, which also read them (`from_fields`): they take quantities.
"""

from functools import cache
from typing import Any

from amberbench.engine import fields

from .records import Field, Record, RecordRegistry, may_be_missing, may_be_null
from .response_documents import DOCUMENTS

Schema = dict[str, Any]
PLACE = "#/components/schemas/"
UNBOUNDED, ENDLESS = 1e299, 10**9
TYPES = {"number": "number", "integer": "integer", "boolean": "boolean", "text": "string", "nothing": "null"}


@cache
def names() -> RecordRegistry:
    """The names of all records, shared with the schemas of requests."""
    return RecordRegistry(DOCUMENTS, requests_asked=True)


def reference(name: str) -> Schema:
    """Where the schema of a document stands."""
    return {"$ref": PLACE + name}


def reply(function: str) -> Schema:
    """Where the schema of a function's reply stands."""
    return reference(names().of(fields.FUNCTIONS[function]["reply"], asked=False))


def components(written: Schema) -> dict[str, Schema]:
    """By name the schemas that an OpenAPI document refers to and has not, and those that they refer to."""
    records = {one.name: one for one in names().records.values()}
    made: dict[str, Schema] = {}
    waiting = _referred(written)
    while waiting:
        name = waiting.pop()
        # What a request asks has its schema from marshmallow; what a reply says to ask has none yet.
        if name in made or name in written["components"]["schemas"]:
            continue
        made[name] = _record(records[name]) if name in records else _spelled(name)
        waiting += _referred(made[name])
    return made


def _referred(schema: Any) -> list[str]:
    inner = schema.values() if isinstance(schema, dict) else schema if isinstance(schema, list) else []
    found = [schema["$ref"][len(PLACE) :]] if isinstance(schema, dict) and PLACE in str(schema.get("$ref")) else []
    return found + [name for one in inner for name in _referred(one)]


def _record(one: Record) -> Schema:
    needed = sorted(name for name in one.fields if not may_be_missing(one.fields[name], one.asked))
    properties = {name: _schema(field, one.asked) for name, field in one.fields.items()}
    return {"type": "object", "description": one.meaning, "properties": properties, "required": needed}


def _spelled(name: str) -> Schema:
    described = DOCUMENTS[name]
    return _either(described, False) if described["kind"] == "either" else _schema(described, False)


def _schema(field: Field, asked: bool) -> Schema:
    asked = asked or bool(field.get("asked"))
    schema = _bare(field, asked)
    if may_be_null(field, asked) and schema.get("type") != "null" and schema:
        schema = {"anyOf": [schema, {"type": "null"}]}
    unit = f" [{field['unit']}]" if field.get("unit") else ""
    return schema | {"description": field["meaning"] + unit}


def _bare(field: Field, asked: bool) -> Schema:
    kind = field["kind"]
    if kind == "record":
        return reference(names().of(field["fields"], asked))
    if kind == "document":
        return reference(field["of"]) if "of" in field else {}
    if kind == "either":
        name = names().of_either(field, asked)
        return reference(name) if name else _either(field, asked)
    if kind == "choice":
        return {"type": "string", "enum": field["options"]}
    if kind == "many":
        most = {"maxItems": field["most"]} if field["most"] < ENDLESS else {}
        return {"type": "array", "items": _schema(field["item"], asked), "minItems": field["least"]} | most
    if kind == "mapping":
        return {"type": "object", "additionalProperties": _schema(field["item"], asked)}
    return {"type": TYPES[kind]} | _bounds(field)


def _bounds(field: Field) -> Schema:
    bounds = {"minimum": field.get("low"), "maximum": field.get("high"), "maxLength": field.get("most")}
    return {name: value for name, value in bounds.items() if value is not None and -UNBOUNDED < value < ENDLESS}


def _either(field: Field, asked: bool) -> Schema:
    schema: Schema = {"oneOf": [_schema(one, asked) for one in field["alternatives"]]}
    return schema | ({"discriminator": {"propertyName": field["by"]}} if "by" in field else {})
