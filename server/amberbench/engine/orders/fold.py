"""An order is the fold of its events: placed, changed, cancelled, its boxing pinned to an hour, handed over."""

from ..core import stream_fold
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Readable
    from ..types import (
        BoxingPinnedBody,
        CancelledBody,
        HandedOverBody,
        Order,
        OrderFoldReply,
        OrderFoldRequest,
        PlacedBody,
    )


# Weights that differ by less are one (kg): no scale of a shop shows it.
SAME_KG = 1e-6


def fold(request: "OrderFoldRequest") -> "OrderFoldReply":
    """An order after all of its events, whatever order they come in; the same id counts once.

    Request: id (the order), events.
    Reply: document (the order with its state and what does not add up), ignored [{id, why}]. Of a hand-over that two
    phones wrote down, neither knowing of the other, the later is passed over and told as a difference; one that says
    something else counts, and is told too.
    Raises: Problem for a request that is none; an event never raises.
    Source: practice.
    """
    reply: "OrderFoldReply" = stream_fold.fold(request, fields.EVENTS, stream_fold.begun(fields.DOCUMENT), FOLDS)
    _judge(reply["document"])
    return reply


def _place(order: "Order", body: "PlacedBody", at_ms: float, event: "Readable") -> None:
    _take(order, body)
    if order["placed_ms"] is None:
        order["placed_ms"] = at_ms


def _change(order: "Order", body: "Any", at_ms: float, event: "Readable") -> None:
    said = event["body"]
    _take(order, {name: _or_default(name, body[name]) for name in fields.ORDER if name in said})


def _or_default(name: str, value: "Any") -> "Any":
    return fields.DOCUMENT[name].get("default") if value is None else value


def _take(order: "Any", body: "Readable") -> None:
    for name in fields.ORDER:
        if name in body:
            order[name] = body[name]


def _cancel(order: "Order", body: "CancelledBody", at_ms: float, event: "Readable") -> None:
    order["cancelled"] = {"at_ms": at_ms, "why": body["why"]}


def _pin(order: "Order", body: "BoxingPinnedBody", at_ms: float, event: "Readable") -> None:
    order["pinned_ms"] = body["at_ms"]


def _hand_over(order: "Order", body: "HandedOverBody", at_ms: float, event: "Readable") -> None:
    lines, seen = body["lines"], body["seen"]
    order["handovers"] += 1
    if seen is not None and seen < order["handovers"] - 1:
        order["differences"].append({"code": "handed_twice", "event_id": event["id"]})
        since = [one for one in order["handed"] if one["nth"] >= seen]
        if [_what(one) for one in lines] == [_what(one) for one in since]:
            return
    for line in lines:
        one: "Any" = dict(line, at_ms=at_ms, by=body["by"], event_id=event["id"], nth=order["handovers"] - 1)
        order["handed"].append(one)


def _what(line: "Readable") -> "tuple[Any, ...]":
    return (line["pack_id"], line["box_id"], line["product_id"], line["count"], line["mass_kg"])


def handed_of(order: "Readable", line: "Readable") -> float:
    """How many boxes or pieces, or how much (kg), of a line's kind were handed over."""
    name = "count" if line["mass_kg"] is None else "mass_kg"
    same = [one for one in order["handed"] if kind_of(one) == kind_of(line)]
    return sum(one[name] or 0 for one in same)


def wanted_of(line: "Readable") -> float:
    """How many boxes or pieces, or how much (kg), a line wants."""
    wanted: float = (line["count"] or 0) if line["mass_kg"] is None else line["mass_kg"]
    return wanted


def kind_of(line: "Readable") -> "tuple[Any, ...]":
    """What a line is of, however much: boxes, pieces, loose by weight."""
    return (line["box_id"], line["product_id"], line["mass_kg"] is None)


def _judge(order: "Order") -> None:
    """Its state, and whether more was handed over than is wanted."""
    wanted: "dict[Any, float]" = {}
    for line in order["lines"]:
        wanted[kind_of(line)] = wanted.get(kind_of(line), 0.0) + wanted_of(line)
    handed: "dict[Any, float]" = {}
    for one in order["handed"]:
        handed[kind_of(one)] = handed.get(kind_of(one), 0.0) + wanted_of(one)
    done = bool(handed) and not [kind for kind in wanted if handed.get(kind, 0.0) < wanted[kind] - SAME_KG]
    if order["cancelled"] is not None:
        order["state"] = "cancelled"
        if handed:
            order["differences"].append({"code": "handed_though_cancelled", "event_id": None})
    else:
        order["state"] = "handed" if done else "part" if handed else "open"
        if [kind for kind in handed if handed[kind] > wanted.get(kind, 0.0) + SAME_KG]:
            order["differences"].append({"code": "handed_more", "event_id": None})


FOLDS: "Any" = {
    "placed": _place,
    "changed": _change,
    "cancelled": _cancel,
    "handed_over": _hand_over,
    "boxing_pinned": _pin,
}
