"""Whether what is to be written of a lot makes sense: asked before it is written, never of what is written."""

from ..core import stream_fold
from ..core.problems import Problem
from . import fields, overview

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable
    from ..types import LotCheckReply, LotCheckRequest, StockUse, Warning


def check(request: "LotCheckRequest") -> "LotCheckReply":
    """Whether an event of a lot makes sense, before it is written.

    Request: kind, body, currency (of the shop), today, now_ms (ms), lot_id, lots and uses (as `stock.overview`),
    materials (names, those of the shop; none: not looked at), unit (the shop's of what came; null: not looked at).
    Reply: body with what was left out, warnings.
    Raises: Problem not_an_option (kind, unit) and those of each field; not_in_shop (material), not_a_day (best_by),
    other_currency (currency), no_such_lot, ring and other_material (into_lot_id), ring (batch_id).
    Warnings: no_price, best_by_over, received_already, more_than_came, more_than_is_left.
    Source: practice.
    """
    body = stream_fold.checked_body(request, fields.EVENTS)
    stream_fold.refuse_no_day(body, ("best_by",))
    stream_fold.refuse_other_currency(body, request["currency"])
    if request["materials"] and "material" in body and body["material"] not in request["materials"]:
        raise Problem("material", "not_in_shop", body["material"])
    if request["unit"] is not None and body.get("unit", request["unit"]) != request["unit"]:
        raise Problem("unit", "not_an_option", body["unit"], accepted=[request["unit"]])
    if request["kind"] == "merged":
        _check_merged(request, body)
    if request["kind"] == "made" and _is_ring(request, body["batch_id"]):
        raise Problem("batch_id", "ring", body["batch_id"])
    return {"body": body, "warnings": _warnings(request, body)}


def _is_ring(request: "LotCheckRequest", batch_id: str | None) -> bool:
    made_from = {lot["id"]: lot["made_from"] for lot in request["lots"]}
    made_from[request["lot_id"]] = batch_id
    return request["lot_id"] in overview.in_a_ring(made_from, request["uses"])


def _check_merged(request: "LotCheckRequest", body: "Readable") -> None:
    lots = {lot["id"]: lot for lot in request["lots"]}
    into = body["into_lot_id"]
    if into not in lots:
        raise Problem("into_lot_id", "no_such_lot", into)
    if into == request["lot_id"] or overview.merged_into(lots).get(into) == request["lot_id"]:
        raise Problem("into_lot_id", "ring", into)
    own = lots.get(request["lot_id"])
    if own is not None and (own["material"], own["unit"]) != (lots[into]["material"], lots[into]["unit"]):
        raise Problem("into_lot_id", "other_material", lots[into]["material"])


def _warnings(request: "LotCheckRequest", body: "Readable") -> "list[Warning]":
    found: "list[Warning]" = []
    if request["kind"] == "received" and body["price_minor"] is None:
        found.append({"code": "no_price", "values": {}})
    if body.get("best_by") is not None and body["best_by"] < request["today"]:
        found.append({"code": "best_by_over", "values": {"day": body["best_by"]}})
    if request["kind"] == "received":
        alike = [lot for lot in request["lots"] if _is_same_delivery(lot, body, request)]
        if alike:
            found.append({"code": "received_already", "values": {"lot": body["supplier_lot"]}})
    lots = {lot["id"]: lot for lot in request["lots"]}
    if request["lot_id"] in lots and request["kind"] in ("left_counted", "discarded"):
        uses: "dict[str, list[StockUse]]" = {}
        for use in request["uses"]:
            uses.setdefault(use["lot_id"], []).append(use)
        poured = overview.poured_to(lots, overview.merged_into(lots))
        came, _, left = overview.left_of(request["lot_id"], lots, uses, poured)
        if request["kind"] == "left_counted" and body["left"] > came:
            found.append({"code": "more_than_came", "values": {}})
        elif request["kind"] == "discarded" and body["amount"] > left + overview.ROUND:
            found.append({"code": "more_than_is_left", "values": {}})
    return found


def _is_same_delivery(lot: "Readable", body: "Readable", request: "LotCheckRequest") -> bool:
    same = lot["supplier_lot"] == body["supplier_lot"] != "" and lot["material"] == body["material"]
    return same and lot["id"] != request["lot_id"] and lot["received_ms"] is not None
