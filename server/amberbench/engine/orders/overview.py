"""Open orders beside what is packed: what is still to be packed, for whom first."""

from ..core import dates
from ..core.problems import Problem
from . import fold

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..types import (
        BoxInHand,
        OpenLine,
        OpenOrder,
        Order,
        OrdersOverviewReply,
        OrdersOverviewRequest,
        Pack,
        PackInHand,
    )


OVER = ("handed", "cancelled")
DAY_MS, NEVER_MS = 86400000.0, 1e15


def overview(request: "OrdersOverviewRequest") -> "OrdersOverviewReply":
    """What open orders want, what of it is packed and what is missing.

    Request: orders (documents of `order.fold`), packs (of `pack.fold`), now_ms (ms), today (YYYY-MM-DD), today_ms (ms,
    the midnight with which it began).
    Reply: orders (open ones, those wanted first in front, what stands on the counter last), boxes (by box: wanted,
    in_hand, missing), packs (left of each, oldest first), differing (ids of orders that do not add up).
    Raises: Problem not_a_day (today).
    Relation: boxes in hand go to the order that is wanted first, those that keep shortest in front, as long as they
    keep until then; seconds go to none. Boxes handed over of no pack are of the oldest that were packed by then.
    Source: practice.
    """
    if not dates.is_day(request["today"]):
        raise Problem("today", "not_a_day", request["today"])
    orders = [order for order in request["orders"] if order["placed_ms"] is not None]
    open_ones = sorted((order for order in orders if order["state"] not in OVER), key=_order)
    packs = _packs(request, orders)
    free = _free(request, packs)
    in_hand = {box_id: sum(pack[1] for pack in free[box_id]) for box_id in free}
    for box_id in free:
        _take(free[box_id], -sum(min(0, pack[1]) for pack in free[box_id]), request["now_ms"])
    rows: "list[OpenOrder]" = [
        {
            "order_id": order["id"],
            "is_late": not order["counter"] and (order["wanted_ms"] or 0.0) < request["now_ms"],
            "lines": _lines(order, free, max(request["now_ms"], order["wanted_ms"] or 0.0)),
            "is_packed": False,
        }
        for order in open_ones
    ]
    for row in rows:
        row["is_packed"] = not [line for line in row["lines"] if line["missing"] > 0]
    differing = sorted(order["id"] for order in orders if order["differences"])
    return {"orders": rows, "boxes": _boxes(rows, in_hand), "packs": packs, "differing": differing}


def _free(request: "OrdersOverviewRequest", packs: "Sequence[PackInHand]") -> "dict[str, list[tuple[float, int]]]":
    """By box (when its best-by is over in ms, how many are left) of each pack that is good still, the first to end in
    front."""
    known = {pack["id"]: pack for pack in request["packs"]}
    found: "dict[str, list[tuple[float, int]]]" = {}
    for row in packs:
        pack = known[row["pack_id"]]
        ends_ms = NEVER_MS
        if pack["best_by"] is not None and dates.is_day(pack["best_by"]):
            ahead = dates.days(pack["best_by"]) - dates.days(request["today"]) + 1
            ends_ms = request["today_ms"] + ahead * DAY_MS
        if pack["box_id"] is not None and not pack["seconds"] and ends_ms > request["now_ms"]:
            found.setdefault(pack["box_id"], []).append((ends_ms, row["left"]))
    return {box_id: sorted(found[box_id]) for box_id in found}


def _take(free: "list[tuple[float, int]]", wanted: int, until_ms: float) -> int:
    """Takes boxes that keep until then, those that end first in front; how many there were."""
    missing = wanted
    for nth, (ends_ms, left) in enumerate(free):
        taken = min(missing, max(0, left)) if ends_ms > until_ms else 0
        free[nth] = (ends_ms, left - taken)
        missing -= taken
    return wanted - missing


def _order(order: "Order") -> "tuple[bool, float, float, str]":
    return (order["counter"], order["wanted_ms"] or 0.0, order["placed_ms"] or 0.0, order["id"])


def _lines(order: "Order", free: "dict[str, list[tuple[float, int]]]", until_ms: float) -> "list[OpenLine]":
    """What each line still wants; boxes in hand that keep until then are taken out of `free`."""
    found: "list[OpenLine]" = []
    # Of two lines of one kind the first is handed over first.
    left: "dict[tuple[object, ...], float]" = {}
    for line in order["lines"]:
        kind = fold.kind_of(line)
        if kind not in left:
            left[kind] = fold.handed_of(order, line)
        wanted = fold.wanted_of(line)
        handed = min(wanted, left[kind])
        left[kind] -= handed
        packed = 0
        if line["box_id"] is not None:
            packed = _take(free.get(line["box_id"], []), int(wanted - handed), until_ms)
        missing = wanted - handed - packed
        if missing < fold.SAME_KG:
            missing = 0.0
        row: "OpenLine" = {
            "box_id": line["box_id"],
            "product_id": line["product_id"],
            "count": line["count"],
            "mass_kg": line["mass_kg"],
            "handed": handed,
            "packed": packed,
            "missing": missing,
        }
        found.append(row)
    return found


def _packs(request: "OrdersOverviewRequest", orders: "Sequence[Order]") -> "list[PackInHand]":
    """What is left of each pack: none, or not even none, where more was handed over than packed."""
    packs = request["packs"]
    ordered = [packs[n] for n in sorted(range(len(packs)), key=lambda n: (packs[n]["at_ms"] or 0.0, packs[n]["id"], n))]
    left = {pack["id"]: pack["count"] for pack in ordered}
    unnamed = []
    for order in orders:
        for one in order["handed"]:
            if one["pack_id"] in left:
                left[one["pack_id"]] -= one["count"] or 0
            elif one["pack_id"] is None and one["box_id"] is not None:
                unnamed.append(one)
    oldest: "dict[str | None, list[Pack]]" = {}
    for pack in ordered:
        if not pack["seconds"]:
            oldest.setdefault(pack["box_id"], []).append(pack)
    for one in sorted(unnamed, key=lambda one: (one["at_ms"], one["event_id"], one["nth"])):
        missing = one["count"] or 0
        of_box = oldest.get(one["box_id"], [])
        while missing and of_box and (of_box[0]["at_ms"] or 0.0) <= one["at_ms"]:
            taken = min(missing, max(0, left[of_box[0]["id"]]))
            left[of_box[0]["id"]] -= taken
            missing -= taken
            if left[of_box[0]["id"]] <= 0:
                of_box.pop(0)
    return [{"pack_id": pack["id"], "left": left[pack["id"]]} for pack in ordered if left[pack["id"]] != 0]


def _boxes(rows: "Sequence[OpenOrder]", in_hand: "dict[str, int]") -> "list[BoxInHand]":
    wanted: "dict[str, int]" = {}
    missing: "dict[str, int]" = {}
    for row in rows:
        for line in row["lines"]:
            if line["box_id"] is not None:
                still = int(line["missing"]) + int(line["packed"])
                wanted[line["box_id"]] = wanted.get(line["box_id"], 0) + still
                missing[line["box_id"]] = missing.get(line["box_id"], 0) + int(line["missing"])
    names = sorted(set(wanted) | set(in_hand))
    return [
        {
            "box_id": name,
            "wanted": wanted.get(name, 0),
            "in_hand": in_hand.get(name, 0),
            "missing": missing.get(name, 0),
        }
        for name in names
    ]
