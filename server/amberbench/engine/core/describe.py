"""The kinds of field a request or reply is described with: plain data, read by `check`."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


BASES = ("typed", "measured", "published", "assumed")


def _field(kind: "Any", meaning: "Any", more: "Any", **own: "Any") -> "Any":
    field = {"kind": kind, "meaning": meaning}
    field.update(own)
    field.update(more)
    return field


def number(unit: "Any", low: "Any", high: "Any", meaning: "Any", **more: "Any") -> "Any":
    """A finite number from low to high; unit "" for a pure number."""
    return _field("number", meaning, more, unit=unit, low=low, high=high)


def integer(low: "Any", high: "Any", meaning: "Any", **more: "Any") -> "Any":
    """A whole number from low to high."""
    return _field("integer", meaning, more, unit="", low=low, high=high)


def boolean(meaning: "Any", **more: "Any") -> "Any":
    """True or false."""
    return _field("boolean", meaning, more)


def text(most: "Any", meaning: "Any", **more: "Any") -> "Any":
    """Text of at most so many characters."""
    return _field("text", meaning, more, most=most)


def choice(options: "Any", meaning: "Any", **more: "Any") -> "Any":
    """One word of a list."""
    return _field("choice", meaning, more, options=list(options))


def record(fields: "Any", meaning: "Any", **more: "Any") -> "Any":
    """A record with these fields and no others."""
    return _field("record", meaning, more, fields=fields)


def many(item: "Any", least: "Any", most: "Any", meaning: "Any", **more: "Any") -> "Any":
    """A list of so many items."""
    return _field("many", meaning, more, item=item, least=least, most=most)


def either(alternatives: "Any", meaning: "Any", **more: "Any") -> "Any":
    """A word of a choice, a number, or the record whose field names fit best."""
    return _field("either", meaning, more, alternatives=alternatives)


def document(meaning: "Any", **more: "Any") -> "Any":
    """A document this list does not look into: a plan, a run. `unread`: nor for NaN, the reader sorts that out."""
    return _field("document", meaning, more)


def together(*parts: "Any") -> "Any":
    fields = {}
    for part in parts:
        fields.update(part)
    return fields
