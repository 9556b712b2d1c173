"""The kinds of field a request or reply is described with: plain data, read by `check`."""

BASES = ("typed", "measured", "published", "assumed")


def _field(kind, meaning, more, **own):
    field = {"kind": kind, "meaning": meaning}
    field.update(own)
    field.update(more)
    return field


def number(unit, low, high, meaning, **more):
    """A finite number from low to high; unit "" for a pure number."""
    return _field("number", meaning, more, unit=unit, low=low, high=high)


def integer(low, high, meaning, **more):
    """A whole number from low to high."""
    return _field("integer", meaning, more, unit="", low=low, high=high)


def boolean(meaning, **more):
    """True or false."""
    return _field("boolean", meaning, more)


def text(most, meaning, **more):
    """Text of at most so many characters."""
    return _field("text", meaning, more, most=most)


def choice(options, meaning, **more):
    """One word of a list."""
    return _field("choice", meaning, more, options=list(options))


def record(fields, meaning, **more):
    """A record with these fields and no others."""
    return _field("record", meaning, more, fields=fields)


def many(item, least, most, meaning, **more):
    """A list of so many items."""
    return _field("many", meaning, more, item=item, least=least, most=most)


def either(alternatives, meaning, **more):
    """A word of a choice, a number, or the record whose field names fit best."""
    return _field("either", meaning, more, alternatives=alternatives)


def document(meaning, **more):
    """A document this list does not look into: a plan, a run. `unread`: nor for NaN, the reader sorts that out."""
    return _field("document", meaning, more)


def together(*parts):
    fields = {}
    for part in parts:
        fields.update(part)
    return fields
