"""Whether a reply or a document is what its description promises."""

import json
from typing import Any

from amberbench.engine import fields
from amberbench.engine.core import check
from amberbench.engine.documents import BODIES
from amberbench.schemas.response_documents import DOCUMENTS

Field = dict[str, Any]


def conforms(name: str, reply: Any, spoilt: bool = False) -> None:
    """Fails unless every field of a function's reply is there, of its kind and in its range, and no other is.

    `spoilt`: a plan or a run in the request may be none; what the engine makes of it then is not looked into.
    """
    json.dumps(reply, allow_nan=False)
    known = fields.FUNCTIONS[name]["reply"]
    if spoilt:
        known = {one: {"kind": "document", "nullable": True} if "of" in known[one] else known[one] for one in known}
    _record(known, reply, f"{name} reply", asked=False)


def is_document(name: str, value: Any) -> None:
    """The same of a document of this name."""
    json.dumps(value, allow_nan=False)
    _same(DOCUMENTS[name], value, name, asked=False)


def is_body(kind: str, body: Any) -> None:
    """The same of the body of an event, which may leave out what has a default."""
    _record(BODIES[kind], body, f"event {kind}", asked=True)


def _same(field: Field, value: Any, path: str, asked: bool) -> None:
    asked = asked or bool(field.get("asked"))
    if value is None:
        assert _may_be_null(field, asked), f"{path} is null"
    elif field["kind"] == "record":
        known = field["fields"]
        named = {name: value[name] for name in value if name in known} if field.get("more") else value
        _record(known, named, path, asked)
    elif field["kind"] == "many":
        assert isinstance(value, list | tuple), f"{path} is no list"
        assert field["least"] <= len(value) <= field["most"], f"{path} has {len(value)} items"
        for index, item in enumerate(value):
            _same(field["item"], item, f"{path}[{index}]", asked)
    elif field["kind"] == "mapping":
        assert isinstance(value, dict), f"{path} is no mapping"
        for name in value:
            _same(field["item"], value[name], f"{path}.{name}", asked)
    elif field["kind"] == "either":
        _either(field, value, path, asked)
    elif field["kind"] == "document":
        if "of" in field:
            _same(DOCUMENTS[field["of"]], value, path, asked=False)
    else:
        assert field["kind"] != "nothing", f"{path} is {value!r}"
        assert check.CHECKS[field["kind"]](field, value, path) == value


def _may_be_null(field: Field, asked: bool) -> bool:
    return bool(field.get("nullable")) or ("default" in field and (asked or field["default"] is None))


def _record(known: dict[str, Field], value: Any, path: str, asked: bool) -> None:
    assert isinstance(value, dict), f"{path} is no record"
    needed = {name for name in known if not (known[name].get("optional") or (asked and "default" in known[name]))}
    assert needed <= set(value), f"{path} lacks {needed - set(value)}"
    assert set(value) <= set(known), f"{path} has {set(value) - set(known)} besides"
    for name in value:
        _same(known[name], value[name], f"{path}.{name}", asked)


def _either(field: Field, value: Any, path: str, asked: bool) -> None:
    alternatives = field["alternatives"]
    if "by" in field:
        alternatives = [one for one in alternatives if _tag(one, field["by"]) == value.get(field["by"])]
        assert alternatives, f"{path} is of no known {field['by']}"
    faults = []
    for one in alternatives:
        try:
            return _same(one, value, path, asked)
        except (AssertionError, ValueError, AttributeError) as fault:
            faults.append(str(fault))
    raise AssertionError("; or ".join(faults))


def _tag(alternative: Field, by: str) -> Any:
    options: list[Any] = DOCUMENTS[alternative["of"]]["fields"][by]["options"]
    return options[0]
