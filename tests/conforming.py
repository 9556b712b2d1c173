"""Whether a reply is what `fields.py` promises."""

import json
from typing import Any

from amberbench.engine import fields
from amberbench.engine.core import check


def conforms(name: str, reply: Any) -> None:
    """Fails unless every field of the reply is there, of its kind and in its range, and no other is."""
    json.dumps(reply, allow_nan=False)
    known = fields.FUNCTIONS[name]["reply"]
    assert set(reply) == set(known), f"{name}: {set(reply) ^ set(known)}"
    for field in known:
        _same(known[field], reply[field], f"{name} reply.{field}")


def _same(field: dict[str, Any], value: Any, path: str) -> None:
    if value is None:
        assert field["kind"] == "document" or ("default" in field and field["default"] is None), f"{path} is null"
    elif field["kind"] == "record":
        assert set(value) == set(field["fields"]), f"{path}: {set(value) ^ set(field['fields'])}"
        for name in field["fields"]:
            _same(field["fields"][name], value[name], f"{path}.{name}")
    elif field["kind"] == "many":
        assert field["least"] <= len(value) <= field["most"], f"{path} has {len(value)} items"
        for index, item in enumerate(value):
            _same(field["item"], item, f"{path}[{index}]")
    else:
        check.CHECKS[field["kind"]](field, value, path)
