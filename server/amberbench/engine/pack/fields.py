"""The events of boxes packed together, and these as a document."""

from ..core import stream_fold
from ..core.field_kinds import boolean, integer, many, number, record, text, together
from ..stock.fields import CHECK, CHECKED, MATERIAL, SOME

MADE_OF = {
    "box_id": dict(stream_fold.ID, meaning="which box of the shop"),
    "from": many(
        record({"batch_id": stream_fold.ID, "pieces": integer(1, 100000, "how many pieces")}, "a batch"),
        0,
        60,
        "the batches its pieces are of",
        default=[],
    ),
    "lots": many(
        record({"lot_id": stream_fold.ID, "amount": SOME}, "a lot"), 0, 60, "boxes, cups, labels by lots", default=[]
    ),
    "code": text(40, "the lot code on the label", default=""),
    "made_on": stream_fold.DAY,
    "best_by": stream_fold.DAY,
    "seconds": boolean("whether they are sold as seconds", default=False),
}
EVENTS = {
    "packed": together(MADE_OF, {"count": integer(1, 100000, "how many boxes")}, stream_fold.BY),
    "net_weighed": together({"net_kg": number("kg", 0, 100, "net weight of one box")}, stream_fold.BY),
    "labels_printed": together({"n": integer(1, 100000, "how many labels")}, stream_fold.BY),
    "unpacked": together(
        {
            "count": integer(1, 100000, "how many boxes were taken back"),
            "why": text(200, "why", default=""),
        },
        stream_fold.BY,
    ),
}
PACK = together(
    {"id": stream_fold.ID},
    MADE_OF,
    {
        "box_id": dict(stream_fold.OR_NONE, meaning="which box of the shop; null: nothing was packed"),
        "packed": integer(0, 100000, "how many boxes were packed", default=0),
        "count": integer(-(10**10), 100000, "how many of them are still boxes; below zero: a difference", default=0),
        "net_kg": many(number("kg", 0, 100, "net weight of one box"), 0, 20000, "weighed", default=[]),
        "printed": integer(0, 10**10, "how many labels were printed", default=0),
        "at_ms": dict(stream_fold.AT_OR_NONE, meaning="when they were packed"),
    },
)
PIECE_BATCH = {
    "batch_id": stream_fold.ID,
    "product_id": dict(stream_fold.OR_NONE, meaning="what it is of; null: it was planned for no product"),
    "good": integer(0, 100000, "good pieces counted"),
}
LEFT = {
    "batch_id": stream_fold.ID,
    "pieces": integer(-(10**10), 100000, "good pieces in no box; below zero: a difference"),
}
FILLED = {
    "box_id": stream_fold.ID,
    "count": integer(0, 100000, "boxes that can be filled"),
    "loose": integer(0, 100000, "pieces of the first batch that are left over then"),
}
BOX = {
    "box_id": stream_fold.ID,
    "lines": many(
        record({"product_id": stream_fold.ID, "count": integer(1, 1000, "how many of it")}, "so many of a product"),
        0,
        40,
        "what is in it",
        default=[],
    ),
    "packaging": many(
        record({"material": MATERIAL, "amount": number("", 0, 1000, "how much of it")}, "so much of a material"),
        0,
        20,
        "box, cups, lid, label of one",
        default=[],
    ),
}
ON_HAND = {
    "lot_id": stream_fold.ID,
    "material": MATERIAL,
    "left": number("", -1e12, 1e12, "what is left of it, in its unit"),
}
FROM = dict(MADE_OF["from"], meaning="what the wanted boxes take, by batch")
LOTS = dict(MADE_OF["lots"], most=1200, meaning="what they are packed in, by lot")
FUNCTIONS = {
    "pack.fold": stream_fold.of_fold("Pack"),
    "pack.boxes": {
        "request": {
            "batches": many(record(PIECE_BATCH, "a counted batch"), 0, 5000, "that which is packed first"),
            "packs": many(record(PACK, "boxes packed"), 0, 20000, "what was packed", default=[]),
            "boxes": many(record(BOX, "a box"), 0, 5000, "those of the shop", default=[]),
            "stock": many(record(ON_HAND, "a lot"), 0, 20000, "lots in the order to use them", default=[]),
            "box_id": dict(stream_fold.OR_NONE, meaning="which box is to be packed; null: none yet"),
            "count": integer(1, 100000, "how many of it; null: none yet", default=None),
            "seconds": boolean("whether they are of pieces that are not good", default=False),
        },
        "reply": {
            "left": many(record(LEFT, "a batch"), 0, 5000, "what is left of each batch"),
            "boxes": many(record(FILLED, "a box"), 0, 5000, "what the first batch fills"),
            "from": FROM,
            "lots": LOTS,
            "short": integer(0, 10**12, "pieces that the wanted boxes take beyond what is left"),
        },
    },
    "pack.check": {
        "request": together(
            CHECK,
            {
                "pack": record(PACK, "the boxes; null: new ones", default=None),
                "boxes": many(stream_fold.ID, 0, 5000, "those of the shop", default=[]),
                "label_kg": number("kg", 0.001, 100, "net weight that the label declares; null: none", default=None),
            },
        ),
        "reply": CHECKED,
    },
}
