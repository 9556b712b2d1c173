"""Open orders beside what is packed: what is still to be packed, for whom first."""

from . import fold

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..types import BoxInHand, OpenLine, OpenOrder, Order, OrdersOverviewReply, OrdersOverviewRequest, PackInHand


OVER = ("handed", "cancelled")


def overview(request: "OrdersOverviewRequest") -> "OrdersOverviewReply":
    """What open orders want, what of it is packed and what is missing.

    Request: orders (documents of `order.fold`), packs (of `pack.fold`), now_ms (ms).
    Reply: orders (open ones, those wanted first in front, what stands on the counter last), boxes (by box: wanted,
    in_hand, missing), packs (left of each, oldest first), differing (ids of orders that do not add up).
    Raises: nothing of its own.
    Relation: boxes in hand go to the order that is wanted first; seconds go to none.
    Source: practice.
    """
    orders = [order for order in request["orders"] if order["placed_ms"] is not None]
    open_ones = sorted((order for order in orders if order["state"] not in OVER), key=_order)
    packs = _packs(request, orders)
    seconds = {pack["id"]: True for pack in request["packs"] if pack["seconds"]}
    box_of = {pack["id"]: pack["box_id"] for pack in request["packs"]}
    in_hand: "dict[str, int]" = {}
    for pack in packs:
        box_id = box_of[pack["pack_id"]]
        if box_id is not None and pack["pack_id"] not in seconds:
            in_hand[box_id] = in_hand.get(box_id, 0) + pack["left"]
    free = {box_id: max(0, in_hand[box_id]) for box_id in in_hand}
    rows: "list[OpenOrder]" = [
        {
            "order_id": order["id"],
            "is_late": not order["counter"] and (order["wanted_ms"] or 0.0) < request["now_ms"],
            "lines": _lines(order, free),
            "is_packed": False,
        }
        for order in open_ones
    ]
    for row in rows:
        row["is_packed"] = not [line for line in row["lines"] if line["missing"] > 0]
    differing = sorted(order["id"] for order in orders if order["differences"])
    return {"orders": rows, "boxes": _boxes(rows, in_hand), "packs": packs, "differing": differing}


def _order(order: "Order") -> "tuple[bool, float, float, str]":
    return (order["counter"], order["wanted_ms"] or 0.0, order["placed_ms"] or 0.0, order["id"])


def _lines(order: "Order", free: "dict[str, int]") -> "list[OpenLine]":
    """What each line still wants; boxes in hand are taken out of `free`."""
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
            packed = min(int(wanted - handed), free.get(line["box_id"], 0))
            free[line["box_id"]] = free.get(line["box_id"], 0) - packed
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
    gone: "dict[str, int]" = {}
    for order in orders:
        for one in order["handed"]:
            if one["pack_id"] is not None:
                gone[one["pack_id"]] = gone.get(one["pack_id"], 0) + (one["count"] or 0)
    ordered = sorted(request["packs"], key=lambda pack: (pack["at_ms"] or 0.0, pack["id"]))
    rows: "list[PackInHand]" = [
        {"pack_id": pack["id"], "left": pack["count"] - gone.get(pack["id"], 0)} for pack in ordered
    ]
    return [row for row in rows if row["left"] != 0]


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
