"""Fields of `needs.plan`."""

from ..core.field_kinds import boolean, choice, document, integer, many, number, record, text, together
from ..pack.fields import PACK
from ..products.tasks import SIZES

ID = text(80, "an id")
OR_NONE = dict(ID, default=None)
MS = number("ms", 0, 1e14, "when it is wanted; null: any time", default=None)
AMOUNT = number("", 0, 1e9, "how much, in the material's unit")
PART = record({"material": ID, "amount": AMOUNT}, "so much of a material")
ASKED = record(
    {
        "kind": choice(sorted(SIZES), "its kind"),
        "material": dict(OR_NONE, meaning="the caramel that the planner speaks of; null: no row names it"),
        "request": document("its request, without how many"),
    },
    "what the planner of its batches is asked; null: a batch takes what its pieces do",
    default=None,
)
PLANNED_PART = record(
    {"material": ID, "amount": AMOUNT, "product_id": dict(OR_NONE, meaning="what is made; null: unknown")}, "a part"
)
WHAT = choice(("caramel", "under", "chocolate", "salt"), "what a piece takes that the shop keeps no row of")
MOST = 20000
LINE = {
    "box_id": dict(OR_NONE, meaning="the box; null: single pieces or loose"),
    "product_id": dict(OR_NONE, meaning="the product; null: boxes"),
    "missing": number("", 0, 1e6, "boxes or pieces still to be packed"),
    "mass_kg": number("kg", 0, 10000, "loose by weight: how much is missing; null: by count", default=None),
}
PRODUCT = {
    "product_id": ID,
    "piece_kg": number("kg", 0.0005, 5, "a finished piece"),
    "yield_share": number("", 0.05, 1, "share of pieces that turn out good, as measured; null: all", default=None),
    "in_hand": integer(0, 1000000, "good pieces that are in no box; null: none", default=None),
    "batch_pieces": integer(1, 1000000, "the most that one batch makes"),
    "block_pieces": integer(1, 1000000, "pieces of one block; null: unknown", default=None),
    "per_piece": many(PART, 0, 60, "what goes into a piece", default=[]),
    "asked": ASKED,
}
LOT = {
    "lot_id": ID,
    "material": ID,
    "left": number("", -1e9, 1e9, "how much is left"),
    "is_past": boolean("whether its day is over", default=False),
}
REQUEST = {
    "orders": many(
        record(
            {"order_id": ID, "wanted_ms": MS, "lines": many(record(LINE, "a line"), 0, 60, "what is missing")},
            "an open order",
        ),
        0,
        MOST,
        "open orders",
    ),
    "boxes": many(
        record(
            {
                "box_id": ID,
                "contents": many(
                    record({"product_id": ID, "count": integer(1, 10000, "pieces")}, "a product in it"),
                    0,
                    60,
                    "what is in it",
                ),
                "packaging": many(PART, 0, 60, "what it is packed in", default=[]),
            },
            "a box",
        ),
        0,
        5000,
        "the shop's boxes",
    ),
    "products": many(record(PRODUCT, "a product"), 0, 5000, "the shop's products"),
    "lots": many(record(LOT, "a lot"), 0, MOST, "what there is, oldest best-by first", default=[]),
    "planned": many(PLANNED_PART, 0, MOST, "what batches that are planned or run will still take", default=[]),
}
PLANNED = {"id": ID, "plan": document("its plan", of="PlanDocument"), "run": document("its state", of="Run")}
FUNCTIONS = {
    "needs.gather": {
        "request": {
            "shop": document("the shop", of="Shop"),
            "orders": REQUEST["orders"],
            "lots": REQUEST["lots"],
            "batches": many(record(PLANNED, "a batch"), 0, 200, "open ones, and those closed lately"),
            "packs": many(record(PACK, "boxes packed"), 0, MOST, "what was packed", default=[]),
            "now_ms": number("ms", 0, 1e14, "corrected time now"),
        },
        "reply": together(
            REQUEST,
            {
                "unsized": many(ID, 0, 5000, "products whose size nobody has said"),
                "unlisted": many(record({"product_id": ID, "what": WHAT}, "a part"), 0, 20000, "what no row names"),
            },
        ),
    },
    "needs.plan": {
        "request": REQUEST,
        "reply": {
            "products": many(
                record(
                    {
                        "product_id": ID,
                        "wanted": integer(0, 10**12, "good pieces that are missing"),
                        "make": integer(0, 10**14, "pieces to make for them"),
                        "by_ms": dict(MS, nullable=True, meaning="when the first are wanted; null: any time"),
                        "order_ids": many(ID, 0, MOST, "for which orders"),
                        "batches": many(
                            record({"pieces": integer(1, 1000000, "pieces")}, "a batch"), 0, 1000, "batches"
                        ),
                    },
                    "a product",
                ),
                0,
                5000,
                "what is to be made",
            ),
            "materials": many(
                record(
                    {
                        "material": ID,
                        "wanted": number("", 0, 1e20, "how much"),
                        "from": many(record({"lot_id": ID, "amount": AMOUNT}, "of a lot"), 0, MOST, "from which lots"),
                        "short": number("", 0, 1e20, "how much is to be bought"),
                        "by_ms": dict(MS, nullable=True, meaning="when the first that is short is wanted; null"),
                    },
                    "a material",
                ),
                0,
                MOST,
                "what goes in",
            ),
            "unknown": many(record({"order_id": ID, "id": ID}, "gone"), 0, 10**7, "boxes and products that are gone"),
        },
    },
}
