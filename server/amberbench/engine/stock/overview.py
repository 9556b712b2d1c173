"""What is left of every lot and every material. Nothing is refused here: what does not add up is a difference."""

from ..core import dates
from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ..types import (
        Count,
        Difference,
        Lot,
        LotLeft,
        MaterialLeft,
        StockOverviewReply,
        StockOverviewRequest,
        StockUse,
    )

    Move = tuple[float, float]  # when (ms), how much


NEVER = "9999-12-31"
# Below this a weighed lot is used up, above it the scale is not (share of what came; common practice, no published
# source). Pieces are whole.
SCALE_SHARE = 0.01
ROUND = 1e-9
# Two phones write down one delivery, and somebody a delivery that is already in use, within this (ms; assumed).
SAME_DAY_MS = 12 * 3600000.0
NEVER_MS = 1e15


def overview(request: "StockOverviewRequest") -> "StockOverviewReply":
    """What is left of lots and materials, what to buy and what to count.

    Request: lots (documents of `lot.fold`), uses [{lot_id, amount, at_ms (ms), batch_id}] of batches and boxes,
    materials [{material, unit, lowest}] of the shop, today.
    Reply: lots (those with some left first, then by oldest best by and arrival), materials (in the order given, then
    those that only lots name; left: of lots in the material's unit that are not past their day), to_count (ids of lots
    with a difference).
    Raises: Problem not_a_day (today).
    Relation: left = the last count, or what came, and what came, went and was thrown away since. A lot that was poured
    to another gives it what it had left at that time; one that was written down twice gives its uses alone.
    Source: practice.
    """
    if not dates.is_day(request["today"]):
        raise Problem("today", "not_a_day", request["today"])
    lots = {lot["id"]: lot for lot in request["lots"]}
    uses: "dict[str, list[StockUse]]" = {lot_id: [] for lot_id in lots}
    for use in request["uses"]:
        uses.setdefault(use["lot_id"], []).append(use)
    into = merged_into(lots)
    twice = _written_twice(lots, into)
    poured = poured_to(lots, into)
    units = {one["material"]: one["unit"] for one in request["materials"]}
    rings = in_a_ring({lot_id: lots[lot_id]["made_from"] for lot_id in lots}, request["uses"])
    rows = []
    for lot_id in sorted(uses):
        if into.get(lot_id) is None:
            said: "list[Difference]" = ["written_twice"] if lot_id in twice else []
            said += ["ring"] if lot_id in rings else []
            row = _row(lot_id, lots, uses, poured, said, request["today"])
            if row["unit"] != units.get(row["material"], row["unit"]):
                row["differences"].append("other_unit")
            rows.append(row)
    rows.sort(key=_order)
    to_count = [row["lot_id"] for row in rows if row["differences"]]
    return {"lots": rows, "materials": _materials(request, rows), "to_count": to_count}


def merged_into(lots: "Mapping[str, Lot]") -> "dict[str, str | None]":
    """For each lot the one that it ended in, or null; what leads round in a ring or nowhere stays by itself."""
    found: "dict[str, str | None]" = {}
    for lot_id in lots:
        at, seen = lot_id, [lot_id]
        while True:
            further = lots[at]["merged_into"]
            if further is None or further not in lots:
                break
            if further in seen:
                at = lot_id
                break
            at = further
            seen.append(at)
        found[lot_id] = at if at != lot_id else None
    return found


def poured_to(lots: "Mapping[str, Lot]", into: "Mapping[str, str | None]") -> "dict[str, list[str]]":
    """The lots that went straight into each."""
    found: "dict[str, list[str]]" = {}
    for lot_id in sorted(lots):
        further = lots[lot_id]["merged_into"]
        if further is not None and into[lot_id] is not None:
            found.setdefault(further, []).append(lot_id)
    return found


def in_a_ring(made_from: "Mapping[str, str | None]", uses: "Sequence[StockUse]") -> list[str]:
    """Lots left over of a batch into which they went themselves, by however many batches between."""
    of_batch: "dict[str | None, list[str]]" = {}
    for use in uses:
        if use["batch_id"] is not None:
            of_batch.setdefault(use["batch_id"], []).append(use["lot_id"])
    found = []
    for lot_id in sorted(made_from):
        seen: "dict[str, bool]" = {}
        waiting = list(of_batch.get(made_from[lot_id], ()))
        while waiting:
            one = waiting.pop()
            if one not in seen:
                seen[one] = True
                waiting += of_batch.get(made_from.get(one), ())
        if lot_id in seen:
            found.append(lot_id)
    return found


def _written_twice(lots: "Mapping[str, Lot]", into: "Mapping[str, str | None]") -> list[str]:
    """Lots that are likely one delivery with another: same material, supplier's lot and amount on the same day."""
    by_name: "dict[tuple[str, str, float], list[Lot]]" = {}
    for lot_id in sorted(lots):
        lot = lots[lot_id]
        if lot["supplier_lot"] and lot["received_ms"] is not None and into[lot_id] is None:
            by_name.setdefault((lot["material"], lot["supplier_lot"], lot["amount"]), []).append(lot)
    found = []
    for alike in by_name.values():
        ordered = sorted((lot["received_ms"] or 0.0, lot["id"]) for lot in alike)
        for index in range(1, len(ordered)):
            if ordered[index][0] - ordered[index - 1][0] <= SAME_DAY_MS:
                found.append(ordered[index][1])
    return found


def left_of(
    lot_id: str,
    lots: "Mapping[str, Lot]",
    uses: "Mapping[str, Sequence[StockUse]]",
    poured: "Mapping[str, Sequence[str]]",
) -> tuple[float, float, float]:
    """(what came, what was used, what is left) of a lot with all that was poured to it."""
    belonging = [lot_id]
    for one in belonging:  # grows while it is walked
        belonging += poured.get(one, ())
    passed: "dict[str, list[Move]]" = {one: [] for one in belonging}
    came = used = left = 0.0
    for one in reversed(belonging):
        lot, moves = lots.get(one), passed[one]
        for use in uses.get(one, ()):
            used += use["amount"]
            moves.append((use["at_ms"], -use["amount"]))
        if lot is None:
            left = _left(moves, (), NEVER_MS)
            continue
        moves += [(gone["at_ms"], -gone["amount"]) for gone in lot["discarded"]]
        since_ms = -NEVER_MS if lot["received_ms"] is None else lot["received_ms"]
        if one == lot_id or lot["adds"]:
            came += lot["amount"]
            moves.append((since_ms, lot["amount"]))
        if one == lot_id:
            left = _left(moves, lot["counts"], NEVER_MS)
        else:
            passed[lot["merged_into"] or lot_id] += _poured(lot, moves, since_ms)
    return came, used, 0.0 if abs(left) < ROUND else left


def _poured(lot: "Lot", moves: "list[Move]", since_ms: float) -> "list[Move]":
    """What a lot gives the one it was poured to: what it had left then, and what was written of it since."""
    if not lot["adds"]:
        return moves
    at_ms = since_ms if lot["merged_ms"] is None else lot["merged_ms"]
    return [(at_ms, _left(moves, lot["counts"], at_ms))] + [move for move in moves if move[0] > at_ms]


def _left(moves: "Sequence[Move]", counts: "Sequence[Count]", until_ms: float) -> float:
    """What is left at a time: the last count until then, with what came and went since."""
    start_ms, left = -2.0 * NEVER_MS, 0.0
    for count in counts:
        if count["at_ms"] <= until_ms:
            start_ms, left = count["at_ms"], count["left"]
    return left + sum(amount for at_ms, amount in moves if start_ms < at_ms <= until_ms)


def is_below_zero(left: float, came: float, unit: str) -> bool:
    """Whether more was used than there can have been, by more than a scale may be wrong."""
    return left < -(SCALE_SHARE * came if unit == "kg" else 0.0) - ROUND


def _row(
    lot_id: str,
    lots: "Mapping[str, Lot]",
    uses: "Mapping[str, Sequence[StockUse]]",
    poured: "Mapping[str, Sequence[str]]",
    said: "list[Difference]",
    today: str,
) -> "LotLeft":
    lot = lots.get(lot_id)
    came, used, left = left_of(lot_id, lots, uses, poured)
    unit = lot["unit"] if lot else "kg"
    differences: "list[Difference]" = []
    received_ms = lot["received_ms"] if lot else None
    if received_ms is None:
        differences.append("never_came")
    elif [use for use in uses[lot_id] if use["at_ms"] < received_ms - SAME_DAY_MS]:
        differences.append("used_before_it_came")
    if received_ms is not None and is_below_zero(left, came, unit):
        differences.append("below_zero")
    best_by = lot["best_by"] if lot else None
    return {
        "lot_id": lot_id,
        "material": lot["material"] if lot else "",
        "unit": unit,
        "got": came,
        "used": used,
        "left": left,
        "best_by": best_by,
        "is_past": best_by is not None and best_by < today,
        "is_open": left > (SCALE_SHARE * came if unit == "kg" and used > 0.0 else 0.0),
        "differences": differences + said,
        "received_ms": received_ms,
    }


def _order(row: "LotLeft") -> tuple[bool, str, float, str]:
    return (not row["is_open"], row["best_by"] or NEVER, row["received_ms"] or 0.0, row["lot_id"])


def _materials(request: "StockOverviewRequest", rows: "Sequence[LotLeft]") -> "list[MaterialLeft]":
    known = {one["material"]: one for one in request["materials"]}
    named = list(known)
    for row in rows:
        if row["material"] and row["material"] not in named:
            named.append(row["material"])
    if len(known) < len(request["materials"]):
        raise Problem("materials", "duplicate_name")
    found: "list[MaterialLeft]" = []
    order = [one["material"] for one in request["materials"]]
    order += sorted(one for one in named if one not in known)
    for material in order:
        own = [row for row in rows if row["material"] == material]
        unit = known[material]["unit"] if material in known else own[0]["unit"]
        lowest = known[material]["lowest"] if material in known else None
        left = sum(row["left"] for row in own if row["left"] > 0.0 and row["unit"] == unit and not row["is_past"])
        days = [row["best_by"] for row in own if row["is_open"] and row["best_by"] is not None]
        found.append(
            {
                "material": material,
                "unit": unit,
                "left": left,
                "lowest": lowest,
                "is_low": lowest is not None and left < lowest,
                "best_by": min(days) if days else None,
            }
        )
    return found
