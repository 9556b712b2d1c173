"""Marshmallow schemas of requests, and through them the OpenAPI document, from the engine's fields."""

from typing import Any

import marshmallow as ma

from amberbench.engine import fields as engine_fields

from . import json_schema
from .fault import schema_messages
from .fields import Either, ListOf, Plain, Quantity, Record
from .records import Field, Fields


def request_schema(function: str) -> type[ma.Schema]:
    """The schema of a function's request; its numbers take quantities too."""
    return _schema(engine_fields.FUNCTIONS[function]["request"])


_made: dict[int, type[ma.Schema]] = {}


def _schema(known: Fields) -> type[ma.Schema]:
    if id(known) not in _made:
        members = {name: _field(described) for name, described in known.items()}
        _made[id(known)] = ma.Schema.from_dict(members, name=json_schema.names().of(known, asked=True))
        _made[id(known)].error_messages = schema_messages(known)
    return _made[id(known)]


def _field(described: Field) -> ma.fields.Field[Any]:
    """The marshmallow field of a description; who asks may use any unit."""
    kind, about = described["kind"], {"metadata": _about(described)}
    if kind == "number":
        return Quantity(described, **about)
    if kind == "integer":
        return Plain(described, (int, float), "not_a_number", **about)
    if kind == "boolean":
        return Plain(described, (bool,), "not_true_or_false", **about)
    if kind == "text":
        return Plain(described, (str,), "not_text", **about)
    if kind == "choice":
        return Plain(described, (str,), "not_an_option", **about)
    if kind == "record":
        return Record(described, _schema(described["fields"]), **about)
    if kind == "many":
        return ListOf(described, _field(described["item"]), **about)
    if kind == "either":
        parts = [_field(one) for one in described["alternatives"]]
        records = [one for one in parts if isinstance(one, Record)]
        return Either(described, records, [one for one in parts if not isinstance(one, Record)], **about)
    return Plain(described, (dict, list, str, int, float, bool), "not_a_document", **about)


def _about(described: Field) -> dict[str, Any]:
    """What the OpenAPI document says of a field besides its type."""
    about: dict[str, Any] = {"description": described["meaning"]}
    if described.get("unit"):
        about["description"] += f" [{described['unit']}]"
    if described.get("default") is not None:
        about["default"] = described["default"]
    return about
