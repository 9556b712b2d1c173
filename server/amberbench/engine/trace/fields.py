"""Fields of `trace.walk`."""

from ..core.field_kinds import boolean, many, record, text
from ..orders.fields import DOCUMENT as ORDER
from ..pack.fields import PACK
from ..stock.fields import LOT

NODE = text(200, "<kind>/<id>: lot, batch, pack, order or customer")
LINK = record({"from": dict(NODE, meaning="what went in"), "to": dict(NODE, meaning="what came of it")}, "a link")
MOST = 200000
LOT_NAME = text(60, "a lot as it was typed; null: none", default=None)
TRACED = {
    "batch_id": text(64, "the batch"),
    "is_bowl": boolean("whether it is a bowl of chocolate", default=False),
    "lot": LOT_NAME,
    "used_lots": many(text(64, "a lot in stock"), 0, 200, "lots that were taken from stock for it", default=[]),
    "dipped_lots": many(LOT_NAME, 0, 20, "lots of the chocolate it was dipped in", default=[]),
    "under_lots": many(LOT_NAME, 0, 20, "lots of what lies under its caramel", default=[]),
    "leftover_lot": LOT_NAME,
}
FUNCTIONS = {
    "trace.walk": {
        "request": {
            "start": NODE,
            "links": many(LINK, 0, MOST, "what went into what", default=[]),
            "lots": many(record(LOT, "a lot"), 0, 20000, "lots", default=[]),
            "batches": many(record(TRACED, "a batch"), 0, 20000, "batches", default=[]),
            "packs": many(record(PACK, "boxes packed"), 0, 20000, "boxes packed", default=[]),
            "orders": many(record(ORDER, "an order"), 0, 20000, "orders", default=[]),
        },
        "reply": {
            "back": many(NODE, 0, MOST, "what went into it, nearest first"),
            "forward": many(NODE, 0, MOST, "what came of it, nearest first"),
            "links": many(LINK, 0, MOST, "the links among them"),
            "deliveries": many(NODE, 0, MOST, "lots it goes back to that came from outside"),
            "customers": many(NODE, 0, MOST, "who got something of it"),
        },
    },
}
