"""A copy of a document with some of its members changed: what it was made from may belong to a plan."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Mapping
    from typing import Any, TypeVar

    D = TypeVar("D", bound=Mapping[str, Any])


def copy_with(document: "D", **members: "Any") -> "D":
    """The document with these members, as a new one; for the type checker of the same type."""
    made: "Any" = dict(document, **members)
    result: "D" = made
    return result
