"""From open orders to pieces, batches, and what to take from which lot or to buy."""

import math

from ..core import check
from ..core.problems import Problem
from ..products.tasks import SIZES

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ..core.annotations import Document, Readable

# Two amounts that differ by less are one (share of a kg or a piece).
ROUND = 1e-9
NEVER_MS = 1e15
# More batches of one product in one plan are a slip of the finger (assumed).
MOST_BATCHES = 1000


def plan(request: "Readable") -> "Document":
    """What open orders need: pieces by product, the batches that make them, materials by lot, what is short.

    Request: orders [{order_id, wanted_ms (ms; null: any time), lines [{box_id, product_id, missing (boxes or pieces),
    mass_kg (kg, loose by weight: how much is missing)}]}], boxes [{box_id, contents [{product_id, count}], packaging
    [{material, amount}]}], products [{product_id, piece_kg (kg), yield_share, in_hand (good pieces not boxed),
    batch_pieces (the most that one batch makes), block_pieces (what one block makes; null: unknown), per_piece
    [{material, amount}], asked {kind, material, request} (what its planner is asked besides how many)}], lots (of
    `stock.overview`), planned [{material, amount, product_id}] (what batches planned already will still take).
    Reply: products [{product_id, wanted (good pieces), make (pieces, with what will not turn out good), by_ms (ms),
    order_ids, batches [{pieces}]}], materials [{material, wanted, from [{lot_id, amount}], short, by_ms (ms, when the
    first that is short is wanted; null)}], unknown [{order_id, id}] (boxes and products that are gone).
    Raises: Problem named_twice (boxes, products), too_many_batches (orders: over a thousand of one product), and those
    of the fields of a planner (products[n].asked.request).
    Relation: pieces in hand go to the orders wanted first; make = wanted / yield_share, whole; fewest batches, then
    none left over, each of whole blocks but the last. Caramel is what the planner weighs in for each batch, with trim
    and residue. Lots in the order given, those past their day last of all and only told as short. No order is refused.
    Source: practice.
    """
    boxes, products = _by_id(request["boxes"], "box_id", "boxes"), _by_id(request["products"], "product_id", "products")
    wants, packaging, unknown = _wants(request, boxes, products)
    ids = [one["product_id"] for one in request["products"]]
    rows = [_product(products[name], wants[name]) for name in ids if wants.get(name)]
    first_ms = {name: min((one["by_ms"] for one in wants[name]), key=_hour) for name in wants}
    demands = packaging + [
        {"material": one["material"], "amount": one["amount"], "by_ms": first_ms.get(one["product_id"])}
        for one in request["planned"]
    ]
    for nth, product in enumerate(request["products"]):
        path = "products[" + str(nth) + "].asked.request"
        for row in rows:
            if row["product_id"] == product["product_id"]:
                demands += _materials(product, row, path)
    return {
        "products": [row for row in rows if row["wanted"]],
        "materials": _from_lots(demands, request["lots"]),
        "unknown": unknown,
    }


def _by_id(rows: "Sequence[Readable]", name: str, field: str) -> "dict[str, Readable]":
    found: "dict[str, Readable]" = {}
    for index, row in enumerate(rows):
        if row[name] in found:
            raise Problem(field + "[" + str(index) + "]." + name, "named_twice", row[name])
        found[row[name]] = row
    return found


def _wants(
    request: "Readable", boxes: "dict[str, Readable]", products: "dict[str, Readable]"
) -> "tuple[dict[str, list[Document]], list[Document], list[Document]]":
    """Good pieces by product, each with its order and hour; packaging; what is not known any more."""
    wants: "dict[str, list[Document]]" = {}
    packaging: "list[Document]" = []
    unknown: "list[Document]" = []
    for order in request["orders"]:
        at_ms = order["wanted_ms"]
        for line in order["lines"]:
            if line["box_id"] is not None:
                box = boxes.get(line["box_id"])
                if box is None:
                    unknown.append({"order_id": order["order_id"], "id": line["box_id"]})
                    continue
                parts = [(one["product_id"], one["count"] * line["missing"]) for one in box["contents"]]
                for one in box["packaging"]:
                    packaging.append(
                        {"material": one["material"], "amount": one["amount"] * line["missing"], "by_ms": at_ms}
                    )
            else:
                parts = [(line["product_id"] or "", _loose(line, products))]
            for product_id, pieces in parts:
                if product_id not in products:
                    unknown.append({"order_id": order["order_id"], "id": product_id})
                elif pieces > 0:
                    row: "Document" = {"pieces": pieces, "order_id": order["order_id"], "by_ms": at_ms}
                    wants.setdefault(product_id, []).append(row)
    return wants, packaging, unknown


def _loose(line: "Readable", products: "dict[str, Readable]") -> float:
    if line["mass_kg"] is None or line["product_id"] not in products:
        missing: float = line["missing"]
        return missing
    return _up(line["mass_kg"] / products[line["product_id"]]["piece_kg"])


def _up(value: float) -> int:
    return math.ceil(value - ROUND * max(1.0, abs(value)))


def _product(product: "Readable", wants: "Sequence[Readable]") -> "Document":
    wants = _beyond(product["in_hand"] or 0, wants)
    wanted = _up(sum(one["pieces"] for one in wants))
    make = _up(wanted / (product["yield_share"] or 1.0))
    most = product["batch_pieces"] * MOST_BATCHES
    if make > most:
        raise Problem("orders", "too_many_batches", make, high=most)
    hours = [one["by_ms"] for one in wants if one["by_ms"] is not None]
    order_ids: list[str] = []
    for one in wants:
        if one["order_id"] not in order_ids:
            order_ids.append(one["order_id"])
    return {
        "product_id": product["product_id"],
        "wanted": wanted,
        "make": make,
        "by_ms": min(hours) if hours else None,
        "order_ids": order_ids,
        "batches": [{"pieces": pieces} for pieces in batches(make, product["batch_pieces"], product["block_pieces"])],
    }


def _beyond(in_hand: int, wants: "Sequence[Readable]") -> "list[Readable]":
    """What is wanted beyond the pieces in hand, which go to those that want them first."""
    left: float = in_hand
    found: "list[Readable]" = []
    for nth in sorted(range(len(wants)), key=lambda n: (_hour(wants[n]["by_ms"]), n)):
        taken = min(left, wants[nth]["pieces"])
        left -= taken
        if wants[nth]["pieces"] > taken:
            found.append(dict(wants[nth], pieces=wants[nth]["pieces"] - taken))
    return found


def batches(make: int, most: int, block: int | None) -> list[int]:
    """The fewest batches of at most so many pieces, together exactly `make`; of whole blocks where that adds none."""
    number = -(-make // most)
    sizes: list[int] = []
    left = make
    for after in range(number - 1, -1, -1):
        size = min(most, left)
        if after and block is not None and size > block:
            whole = size // block * block
            size = whole if left - whole <= after * most else size
        sizes.append(size)
        left -= size
    return sizes


def _materials(product: "Readable", row: "Readable", path: str) -> "list[Document]":
    """What the batches of a product take; path: where its planner's request stands."""
    asked = product["asked"]
    made: "dict[int, int]" = {}
    for batch in row["batches"]:
        made[batch["pieces"]] = made.get(batch["pieces"], 0) + 1
    found: "list[Document]" = []
    for one in product["per_piece"] if row["make"] else []:
        amount = one["amount"] * row["make"]
        if asked is not None and one["material"] == asked["material"]:
            sizes: "Any" = SIZES[asked["kind"]]
            request = check.checked(sizes.FIELDS, asked["request"], path)
            # Too few for a frame of their own are poured into one that is larger by no more than trim.
            weighed = {size: sizes.caramel_kg(request, size) or size * one["amount"] for size in made}
            amount = sum(weighed[size] * made[size] for size in sorted(made))
        found.append({"material": one["material"], "amount": amount, "by_ms": row["by_ms"]})
    return found


def _from_lots(demands: "Sequence[Readable]", lots: "Sequence[Readable]") -> "list[Document]":
    """By material what is wanted, from which lots, what is short; the first that is wanted takes first."""
    left = {lot["lot_id"]: max(0.0, lot["left"]) for lot in lots if not lot["is_past"]}
    found: "dict[str, Document]" = {}
    order = sorted(range(len(demands)), key=lambda n: (_hour(demands[n]["by_ms"]), n))
    for demand in [demands[n] for n in order]:
        row = found.setdefault(
            demand["material"],
            {"material": demand["material"], "wanted": 0.0, "from": [], "short": 0.0, "by_ms": None},
        )
        row["wanted"] += demand["amount"]
        missing: "Any" = demand["amount"]
        for lot in lots:
            if lot["material"] == demand["material"] and left.get(lot["lot_id"], 0.0) > 0.0 and missing > ROUND:
                taken = min(missing, left[lot["lot_id"]])
                left[lot["lot_id"]] -= taken
                missing -= taken
                _add(row["from"], lot["lot_id"], taken)
        if missing > ROUND:
            row["short"] += missing
            if row["by_ms"] is None:
                row["by_ms"] = demand["by_ms"]
    return [found[name] for name in sorted(found)]


def _hour(by_ms: float | None) -> float:
    return NEVER_MS if by_ms is None else float(by_ms)


def _add(taken_from: "list[Document]", lot_id: str, amount: float) -> None:
    for one in taken_from:
        if one["lot_id"] == lot_id:
            one["amount"] += amount
            return
    taken_from.append({"lot_id": lot_id, "amount": amount})
