"""The order of the log, and what makes an event well formed."""

from . import check

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from .annotations import Document, Readable


# What takes an event back, and what lets it count again.
BACK_AND_FORTH = ("undone", "redone")


def in_order(events: "list[Document]") -> "list[Document]":
    """Well-formed events in the order of the log, each id once: of two with one id, the later in the list.

    Mostly they are in order as they come. If not, they are sorted out of a dict, whose order under MicroPython is as
    good as random: its sort takes quadratic time over a list that is nearly in order.
    """
    found: "dict[str, Document]" = {}
    last, ordered = None, True
    for event in events:
        key = order_key(event)
        ordered = ordered and event["id"] not in found and (last is None or last <= key)
        found[event["id"]] = event
        last = key
    return events if ordered else sorted(found.values(), key=order_key)


def taken_back(events: "list[Document]") -> "dict[str, bool]":
    """The ids of events that count as not there, of events in the order of the log: what was said of each last."""
    found: "dict[str, bool]" = {}
    for event in events:
        named = event["body"].get("event_id") if event["kind"] in BACK_AND_FORTH else None
        if type(named) is str:
            found[named] = event["kind"] == "undone"
    return {named: True for named in found if found[named]}


def corrected_ms(event: "Readable") -> float:
    """When an event happened by the server's clock, in ms: the phone's time and its estimate of its own error."""
    result: float = event["at_ms"] + event["offset_ms"]
    return result


def order_key(event: "Readable") -> tuple[float, str, int]:
    """The order of events: corrected time, then device, then the device's own count. A total key."""
    return (corrected_ms(event), event["device_id"], event["seq"])


def total_key(event: "Readable") -> tuple[float, str, int, str]:
    """The same, total even where a device counted one number twice."""
    return (corrected_ms(event), event["device_id"], event["seq"], event["id"])


def well_formed(event: "Any") -> bool:
    """Whether a document has the members every event has."""
    if type(event) is not dict:
        return False
    get, number = event.get, check.is_number
    if type(get("body")) is not dict:
        return False
    if type(get("id")) is not str or type(get("device_id")) is not str or type(get("kind")) is not str:
        return False
    return number(get("at_ms")) and number(get("offset_ms")) and number(get("seq"))
