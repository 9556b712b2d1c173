"""How many boxes a counted batch fills, and what goes into those that are packed."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..types import (
        BoxFilled,
        Pack,
        PackBoxesReply,
        PackBoxesRequest,
        PackBoxesRequestBoxeLine,
        PackedFrom,
        PackedLot,
        PieceBatch,
        PiecesLeft,
    )

ROUND = 1e-9


def boxes(request: "PackBoxesRequest") -> "PackBoxesReply":
    """What boxes the first of some counted batches fills, with what is left of the others, and what the wanted ones
    take.

    Request: batches [{batch_id, product_id, good}] (the one that is packed first, then those that may be added in that
    order), packs (documents of `pack.fold`), boxes [{box_id, lines, packaging}], stock [{lot_id, material, left}] (lots
    in the order to use them), box_id and count (what is to be packed; null: nothing yet), seconds.
    Reply: left [{batch_id, pieces}] (good pieces that are in no box; below zero: a difference), boxes [{box_id, count,
    loose}] (those that hold the first batch's product, the least loose in front), from and lots (as `packed` has them),
    short (pieces that the wanted boxes take beyond what is left).
    Raises: nothing of its own.
    Relation: good pieces less those in boxes, whole boxes of them; of a pack that was taken back in part the pieces are
    loose in the same share. Seconds are of pieces that are not good.
    Example: 174 good and a box of 9: 19 boxes and 3 loose.
    Source: practice.
    """
    batches = request["batches"]
    in_boxes = used(request["packs"])
    left = {one["batch_id"]: one["good"] - in_boxes.get(one["batch_id"], 0) for one in batches}
    rows: "list[BoxFilled]" = []
    wanted: "list[PackedFrom]" = []
    lots: "list[PackedLot]" = []
    short = 0
    for box in request["boxes"]:
        wants = _by_product(box["lines"])
        needs = [(_fitting(batches, name, len(wants)), each) for name, each in wants]
        if not batches or not [fitting for fitting, _each in needs if batches[0] in fitting]:
            continue
        free = [sum(max(0, left[one["batch_id"]]) for one in fitting) for fitting, _each in needs]
        count = min(have // each for have, (_fitting_ones, each) in zip(free, needs))
        own = sum(each for fitting, each in needs if batches[0] in fitting)
        rows.append(
            {"box_id": box["box_id"], "count": count, "loose": max(0, left[batches[0]["batch_id"]] - count * own)}
        )
        if box["box_id"] == request["box_id"] and request["count"] is not None:
            for fitting, each in needs:
                taken, missing = _take(fitting, left, each * request["count"])
                wanted += taken
                short += missing
            for one in box["packaging"]:
                lots += _of_lots(request, one["material"], one["amount"] * request["count"])
    order = sorted((row["count"] == 0, row["loose"], nth) for nth, row in enumerate(rows))
    rows = [rows[one[2]] for one in order]
    pieces: "list[PiecesLeft]" = [{"batch_id": one["batch_id"], "pieces": left[one["batch_id"]]} for one in batches]
    return {"left": pieces, "boxes": rows, "from": wanted, "lots": lots, "short": 0 if request["seconds"] else short}


def _by_product(lines: "Sequence[PackBoxesRequestBoxeLine]") -> "list[tuple[str, int]]":
    """How many of each product a box takes, in the order of its lines."""
    names: list[str] = []
    for line in lines:
        if line["product_id"] not in names:
            names.append(line["product_id"])
    return [(name, sum(line["count"] for line in lines if line["product_id"] == name)) for name in names]


def used(packs: "Sequence[Pack]") -> "dict[str, int]":
    """Good pieces of each batch that are in boxes; of a pack taken back in part whole pieces, together its share."""
    found: "dict[str, int]" = {}
    for pack in packs:
        if not pack["seconds"] and pack["packed"] > 0:
            boxed = max(0, min(pack["count"], pack["packed"]))
            before = 0
            for one in pack["from"]:
                after = before + one["pieces"]
                pieces = after * boxed // pack["packed"] - before * boxed // pack["packed"]
                found[one["batch_id"]] = found.get(one["batch_id"], 0) + pieces
                before = after
    return found


def _fitting(batches: "Sequence[PieceBatch]", product_id: str, lines: int) -> "list[PieceBatch]":
    """Batches of a product; one that was planned for none fits a box of one kind."""
    return [one for one in batches if one["product_id"] == product_id or (one["product_id"] is None and lines == 1)]


def _take(fitting: "Sequence[PieceBatch]", left: "dict[str, int]", wanted: int) -> "tuple[list[PackedFrom], int]":
    """So many pieces in the order of the batches, and how many are missing: those are said to be of the first."""
    taken = {one["batch_id"]: 0 for one in fitting}
    missing = wanted
    names = [one["batch_id"] for one in fitting]
    for name in names:
        taken[name] = min(missing, max(0, left[name]))
        missing -= taken[name]
    if taken:
        taken[fitting[0]["batch_id"]] += missing
    found: "list[PackedFrom]" = [{"batch_id": name, "pieces": taken[name]} for name in names if taken[name] > 0]
    return found, missing


def _of_lots(request: "PackBoxesRequest", material: str, amount: float) -> "list[PackedLot]":
    """So much of a material from its lots in their order; what they have not is said to be of the last."""
    lots = [one for one in request["stock"] if one["material"] == material]
    found: "list[PackedLot]" = []
    for nth, one in enumerate(lots):
        taken = amount if nth == len(lots) - 1 else min(amount, max(0.0, one["left"]))
        if taken > ROUND:
            found.append({"lot_id": one["lot_id"], "amount": taken})
            amount -= taken
    return found
