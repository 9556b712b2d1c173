"""The events of boxes packed together, and these as a document."""

from ..core import streams
from ..core.field_kinds import boolean, integer, many, number, record, text, together
from ..stock.fields import CHECK, CHECKED, SOME

MADE_OF = {
    "box_id": dict(streams.ID, meaning="which box of the shop"),
    "from": many(
        record({"batch_id": streams.ID, "pieces": integer(1, 100000, "how many pieces")}, "a batch"),
        0,
        60,
        "the batches its pieces are of",
        default=[],
    ),
    "lots": many(
        record({"lot_id": streams.ID, "amount": SOME}, "a lot"), 0, 60, "boxes, cups, labels by lots", default=[]
    ),
    "code": text(40, "the lot code on the label", default=""),
    "made_on": streams.DAY,
    "best_by": streams.DAY,
    "seconds": boolean("whether they are sold as seconds", default=False),
}
EVENTS = {
    "packed": together(MADE_OF, {"count": integer(1, 100000, "how many boxes")}, streams.BY),
    "net_weighed": together({"net_kg": number("kg", 0, 100, "net weight of one box")}, streams.BY),
    "labels_printed": together({"n": integer(1, 100000, "how many labels")}, streams.BY),
    "unpacked": together(
        {
            "count": integer(1, 100000, "how many boxes were taken back"),
            "why": text(200, "why", default=""),
        },
        streams.BY,
    ),
}
PACK = together(
    {"id": streams.ID},
    MADE_OF,
    {
        "box_id": dict(streams.OR_NONE, meaning="which box of the shop; null: nothing was packed"),
        "packed": integer(0, 100000, "how many boxes were packed", default=0),
        "count": integer(-(10**10), 100000, "how many of them are still boxes; below zero: a difference", default=0),
        "net_kg": many(number("kg", 0, 100, "net weight of one box"), 0, 20000, "weighed", default=[]),
        "printed": integer(0, 10**10, "how many labels were printed", default=0),
        "at_ms": dict(streams.AT_OR_NONE, meaning="when they were packed"),
    },
)
FUNCTIONS = {
    "pack.fold": streams.of_fold("Pack"),
    "pack.check": {
        "request": together(
            CHECK,
            {
                "pack": record(PACK, "the boxes; null: new ones", default=None),
                "boxes": many(streams.ID, 0, 5000, "those of the shop", default=[]),
            },
        ),
        "reply": CHECKED,
    },
}
