"""One thing wrong with one field, in the engine's words, as marshmallow carries it."""

from collections.abc import Iterable
from typing import Any

from .records import Field

Fault = dict[str, Any]


def fault(code: str, field: Field, given: Any = None, accepted: list[str] | None = None) -> Fault:
    """A fault with the range and unit of its field; the path is filled in where the whole document is known."""
    return {
        "code": code,
        "given": given if isinstance(given, str | int | float) else None,
        "low": field.get("low"),
        "high": field.get("high"),
        "unit": field.get("unit"),
        "accepted": accepted,
    }


def schema_messages(names: Iterable[str]) -> dict[str, Any]:
    """The error messages of a marshmallow schema with these fields: for an unknown field, and for a document that is no
    record.
    """
    return {"unknown": fault("unknown_field", {}, None, sorted(names)), "type": fault("not_a_record", {})}


def flatten(messages: Any, path: str = "") -> list[Fault]:
    """Marshmallow's nested messages as a list of faults, each with its dotted path in `field`."""
    if isinstance(messages, list):
        return [{"field": path or "request"} | message for message in messages]
    found = []
    for step, inner in messages.items():
        inner_path = (
            f"{path}[{step}]" if isinstance(step, int) else f"{path}.{str(step)[:60]}" if path else str(step)[:60]
        )
        found += flatten(inner, path if step == "_schema" else inner_path)
    return found
