"""How the fields of requests look in the OpenAPI document."""

from typing import Any

from apispec.ext.marshmallow.openapi import OpenAPIConverter

from . import json_schema, units
from .fields import Either, ListOf, Plain, Quantity, Record


def describe(converter: OpenAPIConverter, field: Any, **_: Any) -> dict[str, Any]:
    """The JSON Schema of one of our fields; `{}` for a field of marshmallow's own."""
    if isinstance(field, Quantity):
        return _quantity(field)
    if isinstance(field, Plain):
        return _plain(field)
    if isinstance(field, Record):
        return {"allOf": [converter.resolve_nested_schema(type(field.schema))]}
    if isinstance(field, ListOf):
        most = {"minItems": field.described["least"], "maxItems": field.described["most"]}
        return {"type": "array", "items": converter.field2property(field.item)} | most
    if isinstance(field, Either):
        records = [converter.resolve_nested_schema(type(one.schema)) for one in field.records]
        return {"oneOf": [converter.field2property(one) for one in field.plain] + records}
    return {}


def _quantity(field: Quantity) -> dict[str, Any]:
    described = field.described
    bare = {"type": "number", "minimum": described["low"], "maximum": described["high"]}
    accepted = units.accepted(described["unit"])
    if not accepted:
        return bare
    pair = {
        "type": "object",
        "properties": {"value": {"type": "number"}, "unit": {"type": "string", "examples": accepted}},
        "required": ["value", "unit"],
        "additionalProperties": False,
    }
    return {"oneOf": [bare, pair, {"type": "string", "examples": [f"2.5 {accepted[-1]}"]}]}


def _plain(field: Plain) -> dict[str, Any]:
    described = field.described
    if described["kind"] == "document":
        return json_schema.reference(described["of"]) if "of" in described else {}
    if described["kind"] == "choice":
        return {"type": "string", "enum": described["options"]}
    if described["kind"] == "text":
        return {"type": "string", "maxLength": described["most"]}
    if described["kind"] == "boolean":
        return {"type": "boolean"}
    bounds = {"minimum": described["low"], "maximum": described["high"]}
    return {"type": "integer" if described["kind"] == "integer" else "number"} | bounds
