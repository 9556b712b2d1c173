"""The request of `needs.plan`, from the shop's documents: sizes, yields, what is made already, what there is."""

from ..batch import plan_and_run_checks
from ..core.check import figure
from ..core.problems import Problem
from ..products import parts
from ..products.hands import MOST_KG, rows
from ..products.tasks import most_kg as most_for

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ..core.annotations import Document, Readable

FILLED_SHARE = 2.0 / 3.0  # of a bowl (as `products/capacity.py`)
# So many closed batches of a product tell what share turns out good (assumed).
ENOUGH = 3
# Pieces of a batch that was closed longer ago are sold, eaten or boxed without a word (assumed).
KEPT_MS = 7 * 86400000.0


def gather(request: "Readable") -> "Document":
    """What `needs.plan` is to be asked.

    Request: shop (its document), orders [{order_id, wanted_ms (ms), lines}] (as needs.plan takes them), lots
    [{lot_id, material, left, is_past}] (of `stock.overview`), batches [{id, plan, run}] (open ones, and those closed
    lately), packs (documents of `pack.fold`), now_ms (ms).
    Reply: orders, boxes, products, lots, for needs.plan; unsized (ids of products whose size nobody has said: they
    take part in nothing); unlisted [{product_id, what}] (what a piece takes that no row of the shop names, or nobody
    has weighed: it is not among the materials).
    Raises: Problem not_a_document (shop), not_a_run (run), not_a_plan (plan).
    Relation: in hand are the pieces that open batches will give, and those counted in the last seven days that went
    into no box. The share that turns out good is that of three counted batches of the product or more. A batch is at
    most what two thirds of the largest bowl hold, what the table has room for, and what the melt's model takes.
    Source: practice for the bowl, assumed for the rest.
    """
    shop: "Any" = request["shop"]
    if type(shop) is not dict:
        raise Problem("shop", "not_a_document")
    for batch in request["batches"]:
        plan_and_run_checks.check_run(batch["run"])
        plan_and_run_checks.check_plan(batch["plan"])
    products: "list[Document]" = []
    unsized: list[str] = []
    unlisted: "list[Document]" = []
    for row in rows(shop, "products"):
        if type(row.get("id")) is str and row["id"] not in [one["product_id"] for one in products]:
            taken = parts.of_product(row, shop)
            if taken is None or not 0.0005 <= taken["piece_kg"] <= 5.0:
                unsized.append(row["id"])
                continue
            products.append(_product(row, shop, request, taken))
            unlisted += [{"product_id": row["id"], "what": what} for what in taken["unlisted"]]
    boxes = [_box(row) for row in rows(shop, "boxes") if type(row.get("id")) is str]
    return {
        "orders": request["orders"],
        "boxes": boxes,
        "products": products,
        "lots": request["lots"],
        "unsized": unsized,
        "unlisted": unlisted,
    }


def _box(row: "Readable") -> "Document":
    lines = [one for one in rows(row, "lines") if type(one.get("product_id")) is str and figure(one, "count")]
    packaging = [one for one in rows(row, "packaging") if type(one.get("material")) is str]
    return {
        "box_id": row["id"],
        "contents": [{"product_id": one["product_id"], "count": int(one["count"])} for one in lines],
        "packaging": [{"material": one["material"], "amount": figure(one, "amount") or 0.0} for one in packaging],
    }


def _product(row: "Readable", shop: "Any", request: "Readable", taken: "Readable") -> "Document":
    caramel = parts.row_of(shop, "caramels", row.get("caramel_id"))
    density, each_kg = parts.density_of(caramel), taken["caramel_kg"]
    volumes = [figure(one, "volume_m3") or 0.0 for one in rows(shop, "vessels")]
    most_kg = min(MOST_KG, most_for(row, shop, density))
    if volumes and max(volumes) > 0.0:
        most_kg = min(most_kg, FILLED_SHARE * max(volumes) * density)
    block_kg = figure(caramel, "block_kg")
    own = [one for one in request["batches"] if one["plan"].get("product_id") == row["id"]]
    return {
        "product_id": row["id"],
        "piece_kg": taken["piece_kg"],
        "yield_share": _yield(own),
        "in_hand": _in_hand(own, request),
        "batch_pieces": max(1, int(most_kg / each_kg)),
        "block_pieces": max(1, int(block_kg / each_kg)) if block_kg else None,
        "per_piece": taken["parts"],
    }


def _yield(batches: "Sequence[Readable]") -> float | None:
    counted = [one["run"] for one in batches if one["run"]["pieces"] and figure(one["run"], "planned", "pieces")]
    if len(counted) < ENOUGH:
        return None
    planned = sum(float(run["planned"]["pieces"]) for run in counted)
    return min(1.0, max(0.05, sum(float(run["pieces"]) for run in counted) / planned))


def _in_hand(batches: "Sequence[Readable]", request: "Readable") -> int:
    """Pieces that are in no box: those that open batches will give, and those that closed ones gave lately."""
    found = 0.0
    for one in batches:
        run = one["run"]
        closed_ms = run["closed_at_ms"]
        if closed_ms is None:
            found += run["pieces"] or figure(one["plan"], "reply", "good") or figure(run, "planned", "pieces") or 0.0
        elif closed_ms >= request["now_ms"] - KEPT_MS and not run.get("thrown_away"):
            boxed = [part for pack in request["packs"] for part in pack["from"] if part["batch_id"] == one["id"]]
            found += max(0.0, (run["pieces"] or 0.0) - sum(part["pieces"] for part in boxed))
    return min(1000000, int(found))
