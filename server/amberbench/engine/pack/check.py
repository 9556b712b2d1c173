"""Whether what is to be written of boxes packed makes sense: asked before it is written, never of what is written."""

from ..core import stream_fold
from ..core.check import is_above, is_below
from ..core.problems import Problem
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..types import PackCheckReply, PackCheckRequest, Values, Warning


# Grams typed for tenths of an ounce, or a point lost: far from any box that was filled (practice).
FAR_OFF = 5.0


def check(request: "PackCheckRequest") -> "PackCheckReply":
    """Whether an event of boxes packed makes sense, before it is written.

    Request: kind, body, currency, today, now_ms (ms), pack (the boxes as they stand; null: new ones), boxes (ids, those
    of the shop; none: not looked at), label_kg (kg, net weight that the label declares; null: none).
    Reply: body with what was left out, warnings.
    Raises: Problem not_an_option (kind) and those of each field; not_in_shop (box_id), not_a_day, best_by_before_made
    (best_by), more_than_in_hand (count).
    Warnings: best_by_over, net_far_off (a net weight five times the label's or a fifth of it: likely another unit).
    Source: practice.
    """
    body = stream_fold.checked_body(request, fields.EVENTS)
    stream_fold.refuse_no_day(body, ("made_on", "best_by"))
    if request["kind"] == "packed":
        if request["boxes"] and body["box_id"] not in request["boxes"]:
            raise Problem("box_id", "not_in_shop", body["box_id"])
        if body["made_on"] and body["best_by"] and body["best_by"] < body["made_on"]:
            raise Problem("best_by", "best_by_before_made", body["best_by"], accepted=[body["made_on"]])
    pack = request["pack"]
    if request["kind"] == "unpacked" and pack is not None and body["count"] > pack["count"]:
        raise Problem("count", "more_than_in_hand", body["count"], 1, pack["count"])
    warnings: "list[Warning]" = []
    if body.get("best_by") is not None and body["best_by"] < request["today"]:
        warnings.append({"code": "best_by_over", "values": {"day": body["best_by"]}})
    label_kg = request["label_kg"]
    if label_kg is not None and request["kind"] == "net_weighed":
        if is_above(body["net_kg"], FAR_OFF * label_kg) or is_below(body["net_kg"], label_kg / FAR_OFF):
            values: "Values" = {"net_kg": body["net_kg"], "label_kg": label_kg}
            warnings.append({"code": "net_far_off", "values": values})
    return {"body": body, "warnings": warnings}
