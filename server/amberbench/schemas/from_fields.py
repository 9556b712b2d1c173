"""Marshmallow schemas, and through them the OpenAPI document, from the engine's fields."""

from functools import cache
from typing import Any

import marshmallow as ma

from amberbench.engine import fields as engine_fields

from .fault import schema_messages
from .fields import Either, ListOf, Plain, Quantity, Record
from .records import Field, Fields, Named


def request_schema(function: str) -> type[ma.Schema]:
    """The schema of a function's request; its numbers take quantities too."""
    return _schema(engine_fields.FUNCTIONS[function]["request"], True)


def reply_schema(function: str) -> type[ma.Schema]:
    """The schema of a function's reply, for the OpenAPI document."""
    return _schema(engine_fields.FUNCTIONS[function]["reply"], False)


@cache
def _names() -> Named:
    return Named(requests_asked=True)


_made: dict[tuple[int, bool], type[ma.Schema]] = {}


def _schema(known: Fields, asked: bool) -> type[ma.Schema]:
    key = (id(known), asked)
    if key not in _made:

        def inner(described: Field) -> type[ma.Schema]:
            return _schema(described["fields"], asked)

        members = {name: _field(described, inner, asked) for name, described in known.items()}
        _made[key] = ma.Schema.from_dict(members, name=_names().of(known, asked))
        _made[key].error_messages = schema_messages(known)
    return _made[key]


def _field(described: Field, inner: Any, asked: bool) -> ma.fields.Field[Any]:
    """The marshmallow field of a description; `inner` finds the schema of a record; who asks may use any unit."""
    kind, about = described["kind"], {"metadata": _about(described)}
    if kind == "number" and asked:
        return Quantity(described, **about)
    if kind in ("number", "integer"):
        return Plain(described, (int, float), "not_a_number", **about)
    if kind == "boolean":
        return Plain(described, (bool,), "not_true_or_false", **about)
    if kind == "text":
        return Plain(described, (str,), "not_text", **about)
    if kind == "choice":
        return Plain(described, (str,), "not_an_option", **about)
    if kind == "record":
        return Record(described, inner(described), **about)
    if kind == "many":
        return ListOf(described, _field(described["item"], inner, asked), **about)
    if kind == "either":
        parts = [_field(one, inner, asked) for one in described["alternatives"]]
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
