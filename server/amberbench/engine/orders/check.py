"""Whether what is to be written of an order makes sense: asked before it is written, never of what is written."""

from ..core import stream_fold
from ..core.problems import Problem
from . import fields, fold

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable
    from ..types import OrderCheckReply, OrderCheckRequest, Warning


# More of one thing than this is asked once more (boxes or pieces; kg; assumed).
MANY, MUCH_KG = 1000, 100.0


def check(request: "OrderCheckRequest") -> "OrderCheckReply":
    """Whether an event of an order makes sense, before it is written.

    Request: kind, body, currency (of the shop), today, now_ms and today_ms (ms; the midnight with which today began),
    order (as it stands; null: a new one), boxes and products (ids, those of the shop; none of both: not looked at).
    Reply: body with what was left out, warnings.
    Raises: Problem not_an_option (kind) and those of each field; too_few (lines) for an order of nothing, give_one_of
    (a line) that is no box or product with a count or a weight, not_in_shop (box_id, product_id), wanted_before_today
    (wanted_ms) for what was wanted before midnight, other_currency (currency), already_over (kind).
    Warnings: large_order, large_order_by_weight, already_late, more_than_wanted.
    Source: practice.
    """
    body = stream_fold.checked_body(request, fields.EVENTS)
    stream_fold.refuse_other_currency(dict(body, currency=body.get("currency") or ""), request["currency"])
    kind, order = request["kind"], request["order"]
    if order is not None and kind in ("changed", "cancelled") and order["state"] in ("handed", "cancelled"):
        raise Problem("kind", "already_over", kind)
    lines = body.get("lines")
    if lines is not None:
        if not lines:
            raise Problem("lines", "too_few", 0, 1, fields.MOST_LINES)
        for index, line in enumerate(lines):
            _check_line(line, request, "lines[" + str(index) + "]")
    wanted_ms = body.get("wanted_ms")
    if wanted_ms is not None and not body.get("counter") and wanted_ms < request["today_ms"]:
        raise Problem("wanted_ms", "wanted_before_today", wanted_ms)
    return {"body": body, "warnings": _warnings(request, body)}


def _check_line(line: "Readable", request: "OrderCheckRequest", path: str) -> None:
    boxes, products = request["boxes"], request["products"]
    if (line["box_id"] is None) == (line["product_id"] is None):
        raise Problem(path, "give_one_of", accepted=["box_id", "product_id"])
    if (line["count"] is None) == (line["mass_kg"] is None):
        raise Problem(path, "give_one_of", accepted=["count", "mass_kg"])
    if line["box_id"] is not None and line["mass_kg"] is not None:
        raise Problem(path, "give_one_of", accepted=["count", "mass_kg"])
    if boxes or products:
        for name, known in (("box_id", boxes), ("product_id", products)):
            if line[name] is not None and line[name] not in known:
                raise Problem(path + "." + name, "not_in_shop", line[name])


def _warnings(request: "OrderCheckRequest", body: "Readable") -> "list[Warning]":
    found: "list[Warning]" = []
    lines = body.get("lines") or []
    many = [line["count"] for line in lines if (line["count"] or 0) >= MANY]
    much = [line["mass_kg"] for line in lines if (line["mass_kg"] or 0.0) >= MUCH_KG]
    if many:
        found.append({"code": "large_order", "values": {"n": max(many)}})
    elif much:
        found.append({"code": "large_order_by_weight", "values": {"mass_kg": max(much)}})
    wanted_ms = body.get("wanted_ms")
    if wanted_ms is not None and not body.get("counter") and wanted_ms < request["now_ms"]:
        found.append({"code": "already_late", "values": {}})
    order = request["order"]
    if request["kind"] == "handed_over" and order is not None and _is_more(order, lines):
        found.append({"code": "more_than_wanted", "values": {}})
    return found


def _is_more(order: "Readable", lines: "list[Readable]") -> bool:
    """Whether these lines hand over more of something than is still wanted."""
    left: "dict[object, float]" = {}
    for line in order["lines"]:
        left[fold.kind_of(line)] = left.get(fold.kind_of(line), 0.0) + fold.wanted_of(line)
    for line in list(order["handed"]) + list(lines):
        left[fold.kind_of(line)] = left.get(fold.kind_of(line), 0.0) - fold.wanted_of(line)
    return min(left.values()) < -fold.SAME_KG if left else False
