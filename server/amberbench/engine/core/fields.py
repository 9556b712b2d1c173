"""The fields that everything has: the basis of inputs, warnings, how many were seen; and of converting units."""

from .field_kinds import BASES, choice, document, integer, many, number, record, text, together

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .annotations import Document

BATCHES = integer(0, 1000000, "closed batches it was measured from, or null", default=None)
# Two phones may have taken the same step while neither had heard of the other: the event says what it answers.
SEEN = {"seen": integer(0, 100000, "how many of its kind had been counted when it was tapped", default=None)}
PHOTOGRAPHED = {
    "photo_id": text(36, "UUIDv7 of the picture, which the phone sends by itself"),
    "bytes": integer(1, 2**21, "its length as JPEG"),
    "width_px": integer(1, 10000, "its width"),
    "height_px": integer(1, 10000, "its height"),
}


def decided(fields: "Document") -> "Document":
    """What was decided when an event was told, as a field of its body."""
    by = {
        "engine": text(64, "version of the engine that decided", default=""),
        "since_ms": number("ms", 0, 1e15, "when what it builds on was told of; null: on nothing", default=None),
    }
    return {
        "decided": record(together(by, fields), "what was decided then; null: it is when it is folded", default=None)
    }


BASIS = {
    "basis": document(
        "basis of fields by dotted path: typed, measured, published or assumed", default=None, of="BasisByField"
    ),
    "batches": document(
        "how many closed batches a measured field rests on, by dotted path", default=None, of="BatchesByField"
    ),
}
INPUTS = {
    "inputs": many(
        record(
            {
                "field": text(80, "dotted path of the field"),
                "value": document("the value used"),
                "unit": text(20, "its unit"),
                "basis": choice(BASES, "where the value comes from"),
                "source": text(40, "source key, or null", default=None),
                "measure_by": text(40, "the test that measures it, or null", default=None),
                "n": BATCHES,
            },
            "one input and its basis",
        ),
        0,
        200,
        "every input that went into the answer",
    )
}
WARNINGS = many(
    record({"code": text(40, "key of the sentence"), "values": document("numbers in it", of="Values")}, "one"),
    0,
    20,
    "what to mind",
)


FUNCTIONS = {
    "units.convert": {
        "request": {
            "value": number("", -1e12, 1e12, "what to convert"),
            "from": text(8, "its unit"),
            "to": text(8, "the unit wanted"),
        },
        "reply": {"value": number("", -1e16, 1e16, "the converted value")},
    },
}
