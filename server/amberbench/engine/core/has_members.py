"""Whether a document has the members that somebody will read of it, each of its kind; it may say more.

For documents that an older or newer version made: a range is held only where the field says `held`, so that none that
worked is refused.
"""

from . import check
from .problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from .annotations import Readable


def has_members(fields: "Readable", document: "Any") -> bool:
    """Whether it is a record with these members; what has a default may be missing, null only where that is one."""
    if type(document) is not dict:
        return False
    return all(_has(fields[name], document[name]) if name in document else "default" in fields[name] for name in fields)


def _has(field: "Readable", value: "Any") -> bool:
    if value is None:
        return bool(field.get("nullable")) or ("default" in field and field["default"] is None)
    kind = field["kind"]
    if kind == "record":
        return has_members(field["fields"], value)
    if kind == "many":
        return type(value) is list and all(_has(field["item"], one) for one in value)
    if kind in ("number", "integer"):
        return check.is_number(value) and (not field.get("held") or field["low"] <= value <= field["high"])
    if kind == "text":
        return type(value) is str
    if kind == "document":
        return True
    try:
        check.CHECKS[kind](field, value, "")
    except Problem:
        return False
    return True
