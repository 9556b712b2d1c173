"""What a run reads of every plan, whatever its kind; of an older one much is missing."""

from ..core.field_kinds import document, many, number, record, text

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document

WARNINGS = many(
    record({"code": text(80, "key of its sentence"), "values": document("numbers in it")}, "one"),
    0,
    100,
    "said",
    default=[],
)
AMOUNT = number("", 0, 1e9, "an amount", held=True)
SOME = number("", 1e-12, 1e9, "an amount that is not nothing", held=True)
REPLY = {
    "warnings": WARNINGS,
    "room": record({"warnings": WARNINGS}, "what the room's air does", default=None),
    "dip": record({}, "how it is dipped; null: it is not, or nobody asked", default=None),
}
TIME = number("s", -1e300, 1e300, "a time")

REMELT = record(
    {"old_kg": AMOUNT, "n": AMOUNT, "allowed_n": dict(AMOUNT, default=None)},
    "old caramel in it; null: nobody asked",
    default=None,
)


def times(*names: str, **more: "Any") -> "Document":
    """A record of times."""
    return record({name: TIME for name in names}, "times", **more)
