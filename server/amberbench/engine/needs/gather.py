"""The request of `needs.plan`, from the shop's documents: sizes, yields, what is made already, what there is."""

from ..batch import plan_and_run_checks
from ..core.check import figure
from ..core.problems import Problem
from ..pack import boxes as pack_boxes
from ..products import capacity, parts
from ..products.hands import largest_bowl_m3, rows
from ..products.tasks import SIZES

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ..core.annotations import Document, Readable

# So many closed batches of a product tell what share turns out good (assumed).
ENOUGH = 3
# Pieces of a batch that was closed longer ago are sold, eaten or boxed without a word (assumed).
KEPT_MS = 7 * 86400000.0


def gather(request: "Readable") -> "Document":
    """What `needs.plan` is to be asked.

    Request: shop (its document), orders [{order_id, wanted_ms (ms), lines}] (as needs.plan takes them), lots
    [{lot_id, material, left, is_past}] (of `stock.overview`), batches [{id, plan, run}] (open ones, and those closed
    lately), packs (documents of `pack.fold`), now_ms (ms).
    Reply: orders, boxes, products, lots, planned, for needs.plan; unsized (ids of products whose size nobody has said,
    or of which no batch can be planned: they take part in nothing); unlisted [{product_id, what}] (what a piece takes
    that no row of the shop names, or nobody has weighed: it is not among the materials).
    Raises: Problem not_a_document (shop), not_a_run (run), not_a_plan (plan).
    Relation: in hand are the pieces that open batches will give, and those counted in the last seven days that went
    into no box. The share that turns out good is that of three counted batches of the product or more; of one that was
    thrown away none is. The planner of the kind says how large a batch can be, in the largest bowl. An open batch will
    still take its caramel until that is weighed in, and the rest until it was noted of a lot or its pieces are counted.
    Source: assumed.
    """
    shop: "Any" = request["shop"]
    if type(shop) is not dict:
        raise Problem("shop", "not_a_document")
    for batch in request["batches"]:
        plan_and_run_checks.check_run(batch["run"])
        plan_and_run_checks.check_plan(batch["plan"])
    used = pack_boxes.used(request["packs"])
    products: "list[Document]" = []
    unsized: list[str] = []
    unlisted: "list[Document]" = []
    for row in rows(shop, "products"):
        if type(row.get("id")) is str and row["id"] not in [one["product_id"] for one in products]:
            taken = parts.of_product(row, shop)
            product = _product(row, shop, request, used, taken) if taken else None
            if taken is None or product is None:
                unsized.append(row["id"])
                continue
            products.append(product)
            unlisted += [{"product_id": row["id"], "what": what} for what in taken["unlisted"]]
    boxes = [_box(row) for row in rows(shop, "boxes") if type(row.get("id")) is str]
    return {
        "orders": request["orders"],
        "boxes": boxes,
        "products": products,
        "lots": request["lots"],
        "planned": _still_to_take(request, shop),
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


def _product(
    row: "Readable", shop: "Any", request: "Readable", used: "dict[str, int]", taken: "Readable"
) -> "Document | None":
    """A product as needs.plan takes it; None: no batch of it can be planned."""
    caramel = parts.row_of(shop, "caramels", row.get("caramel_id"))
    block_kg = figure(caramel, "block_kg")
    material = "caramels/" + caramel["id"] if type(caramel.get("id")) is str else None
    asked: "Document | None" = None
    try:
        if row["kind"] in SIZES:
            sizes: "Any" = SIZES[row["kind"]]
            asked = {"kind": row["kind"], "material": material, "request": sizes.asked(row, shop, caramel)}
            most = sizes.most_pieces(asked["request"])
            of_block = sizes.most_pieces(asked["request"], block_kg) if block_kg else 0
        else:
            bowl_kg = capacity.most_kg({"vessel_volume_m3": largest_bowl_m3(shop)}, parts.density_of(caramel))
            most, of_block = (int(kg / taken["caramel_kg"] + 1e-9) for kg in (bowl_kg, block_kg or 0.0))
    except Problem:  # a size that no plan takes
        return None
    if most < 1 or not 0.0005 <= taken["piece_kg"] <= 5.0:
        return None
    own = [one for one in request["batches"] if one["plan"].get("product_id") == row["id"]]
    return {
        "product_id": row["id"],
        "piece_kg": taken["piece_kg"],
        "yield_share": _yield(own),
        "in_hand": _in_hand(own, used, request["now_ms"]),
        "batch_pieces": most,
        "block_pieces": of_block or None,
        "per_piece": taken["parts"],
        "asked": asked,
    }


def _good(run: "Any") -> float | None:
    """Good pieces that were counted, none of a batch that was thrown away; None: nobody has counted."""
    return 0.0 if run.get("thrown_away") else None if run["pieces"] is None else float(run["pieces"])


def _yield(batches: "Sequence[Readable]") -> float | None:
    runs = [one["run"] for one in batches if figure(one["run"], "planned", "pieces")]
    counted = [run for run in runs if _good(run) is not None]
    if len(counted) < ENOUGH:
        return None
    planned = sum(float(run["planned"]["pieces"]) for run in counted)
    return min(1.0, max(0.05, sum(_good(run) or 0.0 for run in counted) / planned))


def _in_hand(batches: "Sequence[Readable]", used: "dict[str, int]", now_ms: float) -> int:
    """Pieces that are in no box: those that open batches will give, and those that closed ones gave lately."""
    found = 0.0
    for one in batches:
        run, good = one["run"], _good(one["run"])
        if run["closed_at_ms"] is None and good is None:
            good = figure(one["plan"], "reply", "good") or figure(run, "planned", "pieces")
        if run["closed_at_ms"] is None or run["closed_at_ms"] >= now_ms - KEPT_MS:
            found += max(0.0, (good or 0.0) - used.get(one["id"], 0))
    return min(1000000, int(found))


def _still_to_take(request: "Readable", shop: "Any") -> "list[Document]":
    """What open batches will still take: caramel by their plans, the rest as their product has it."""
    material_of = {lot["lot_id"]: lot["material"] for lot in request["lots"]}
    found: "list[Document]" = []
    for one in request["batches"]:
        plan, run = one["plan"], one["run"]
        if run["closed_at_ms"] is not None or run["kind"] not in SIZES or _good(run) is not None:
            continue
        row = parts.row_of(shop, "products", plan.get("product_id"))
        amounts: "dict[str, float]" = {}
        pieces = figure(run, "planned", "pieces") or 0.0
        for part in (parts.of_product(row, shop) or {"parts": []})["parts"]:
            if not part["material"].startswith("caramels/"):
                amounts[part["material"]] = part["amount"] * pieces
        caramel_id = plan.get("caramel_id") or row.get("caramel_id")
        if run["weighed_kg"] is None and type(caramel_id) is str:
            fresh_kg = figure(plan, "reply", "remelt", "fresh_kg")
            caramel_kg = figure(plan, "reply", "caramel_kg") or 0.0
            amounts["caramels/" + caramel_id] = caramel_kg if fresh_kg is None else fresh_kg
        noted = [material_of.get(use["lot_id"]) for use in run.get("uses") or []]
        product_id = plan.get("product_id")
        for material in sorted(amounts):
            if material not in noted:
                found.append({"material": material, "amount": amounts[material], "product_id": product_id})
    return found
