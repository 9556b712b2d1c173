"""The parts of a prompt: a button, a number to type, a clock; and the largest count that is believed."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..types import Clock, Entry, EventButton, SoundName, TextEntry
    from .annotations import Document


# A rest this many times what was weighed in is a slip of the finger (assumed).
SLIP_FACTOR = 4
# So is a count of more than twice what was planned, as if every piece were halved; of a few, some more (assumed).
MOST_COUNTED, MORE_OF_FEW = 2, 20


def most_pieces(likely: int) -> int:
    """The largest number of pieces that a count of this batch may say; more is a slip of the finger."""
    return max(int(likely) + MORE_OF_FEW, int(MOST_COUNTED * likely))


def button(code: str, kind: str, body: "Document | None" = None) -> "EventButton":
    """A button: the key of its words, the kind of event it writes and the event's body."""
    return {"code": "button." + code, "kind": kind, "body": body or {}}


def skip(step: str) -> "EventButton":
    """The button that passes over a step."""
    return button("skip_" + step, "step_skipped", {"step": step})


def entry(kind: str, field: str, low: float, high: float, **more: "Any") -> "Entry":
    """A number to type on the keypad: the event it writes, its accepted range, and what to show beside it."""
    made: "Entry" = _typed(kind, field, low, high, more)
    return made


def text_entry(kind: str, field: str, **more: "Any") -> "TextEntry":
    """Words to type: they have no range."""
    made: "TextEntry" = _typed(kind, field, None, None, more)
    return made


def _typed(kind: str, field: str, low: float | None, high: float | None, more: "Document") -> "Any":
    made: "Document" = {"kind": kind, "field": field, "name": field, "low": low, "high": high, "body": {}}
    for name in ("last", "likely_low", "likely_high", "band_low", "band_high"):
        made[name] = more.get(name)
    if "body" in more:
        made["body"] = more["body"]
    return made


def clock(
    name: str, started_ms: float, due_ms: float, sound: "SoundName", tells: "EventButton | None" = None
) -> "Clock":
    """A running clock; the sound is one of stir, read, ready and too_hot. `tells`: the tap that silences it is the
    button of its page too, for hands that have only a knuckle free.
    """
    made: "Clock" = {"name": name, "started_ms": started_ms, "due_ms": due_ms, "sound": sound}
    if tells is not None:
        made["tells"] = tells
    return made
