"""The kinds of field a request or reply is described with: plain data, read by `check`."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Iterable
    from typing import Any

    from .annotations import Document


BASES = ("typed", "measured", "published", "assumed")


def _field(kind: str, meaning: str, more: "Document", **own: "Any") -> "Document":
    field: "Document" = {"kind": kind, "meaning": meaning}
    field.update(own)
    field.update(more)
    return field


def number(unit: str, low: float, high: float, meaning: str, **more: "Any") -> "Document":
    """A finite number from low to high; unit "" for a pure number.

    `default_in`: {unit: figure}, the default as a shop has it whose unit that is, a round figure there too.
    """
    return _field("number", meaning, more, unit=unit, low=low, high=high)


def integer(low: float, high: float, meaning: str, **more: "Any") -> "Document":
    """A whole number from low to high."""
    return _field("integer", meaning, more, unit="", low=low, high=high)


def boolean(meaning: str, **more: "Any") -> "Document":
    """True or false."""
    return _field("boolean", meaning, more)


def text(most: int, meaning: str, **more: "Any") -> "Document":
    """Text of at most so many characters."""
    return _field("text", meaning, more, most=most)


def choice(options: "Iterable[str]", meaning: str, **more: "Any") -> "Document":
    """One word of a list."""
    return _field("choice", meaning, more, options=list(options))


def record(fields: "Document", meaning: str, **more: "Any") -> "Document":
    """A record with these fields and no others."""
    return _field("record", meaning, more, fields=fields)


def many(item: "Document", least: int, most: int, meaning: str, **more: "Any") -> "Document":
    """A list of so many items."""
    return _field("many", meaning, more, item=item, least=least, most=most)


def either(alternatives: "list[Document]", meaning: str, **more: "Any") -> "Document":
    """A word of a choice, a number, or the record whose field names fit best."""
    return _field("either", meaning, more, alternatives=alternatives)


def document(meaning: str, **more: "Any") -> "Document":
    """A document this list does not look into: a plan, a run. `of`: which one, by its name in `engine/documents.py`.

    `unread`: it is not looked through for NaN either, the reader sorts that out.
    """
    return _field("document", meaning, more)


def together(*parts: "Document") -> "Document":
    """All of several parts: fields, folds, pages."""
    fields: "Document" = {}
    for part in parts:
        fields.update(part)
    return fields
