"""The events of an order, the order as a document, and what its functions take and give."""

from ..core import stream_fold
from ..core.field_kinds import boolean, choice, integer, many, number, record, text, together
from ..core.fields import SEEN
from ..pack.fields import PACK
from ..stock.fields import CHECK, CHECKED

MOST_LINES = 60
COUNT = integer(1, 100000, "how many", default=None)
MASS_KG = number("kg", 0.001, 10000, "loose by weight; null: by count", default=None)
WHAT = {
    "box_id": dict(stream_fold.OR_NONE, meaning="a box of the shop; null: single pieces or loose"),
    "product_id": dict(stream_fold.OR_NONE, meaning="a product of the shop; null: boxes"),
    "count": COUNT,
    "mass_kg": MASS_KG,
}
LINE = record(WHAT, "so many boxes, pieces, or so much of a product")
HANDED_LINE = record(
    together(WHAT, {"pack_id": dict(stream_fold.OR_NONE, meaning="packed as; null: nobody wrote that down")}),
    "what was handed over",
)
ORDER = {
    "customer_id": dict(stream_fold.OR_NONE, meaning="a customer of the shop; null: only a name"),
    "customer": text(80, "the customer's name", default=""),
    "wanted_ms": number("ms", 0, 1e14, "when it is wanted"),
    "lines": many(LINE, 0, MOST_LINES, "what is wanted"),
    "price_minor": dict(stream_fold.MONEY, meaning="agreed price of all; null: by the list"),
    "currency": stream_fold.CURRENCY,
    "note": text(500, "a note", default=""),
    "repeats": choice(("week",), "wanted again every week; null: once", default=None),
    "counter": boolean("whether it is stock for the shop's own counter", default=False),
}
PINNED_MS = number(
    "ms", 0, 1e14, "when its boxing is to begin by the plan of the day; null: whenever it fits", default=None
)
CHANGES = {name: dict(ORDER[name], default=None) for name in ORDER}
HANDED_OVER = together({"lines": many(HANDED_LINE, 0, MOST_LINES, "what was handed over")}, SEEN, stream_fold.BY)
EVENTS = {
    "placed": together(ORDER, stream_fold.BY),
    "changed": together(CHANGES, stream_fold.BY),
    "cancelled": together({"why": text(200, "why", default="")}, stream_fold.BY),
    "handed_over": HANDED_OVER,
    "boxing_pinned": together({"at_ms": PINNED_MS}, stream_fold.BY),
}
STATES = ("open", "part", "handed", "cancelled")
DIFFERENCES = ("handed_twice", "handed_more", "handed_though_cancelled")
DIFFERENCE = record(
    {
        "code": choice(DIFFERENCES, "what does not add up"),
        "event_id": dict(stream_fold.OR_NONE, meaning="what may be taken back"),
    },
    "what does not add up",
)
DOCUMENT = together(
    {"id": stream_fold.ID},
    ORDER,
    {
        "wanted_ms": dict(stream_fold.AT_OR_NONE, meaning="when it is wanted"),
        "placed_ms": dict(stream_fold.AT_OR_NONE, meaning="when it was placed; null: not known yet"),
        "cancelled": record(
            {"at_ms": stream_fold.AT, "why": text(200, "why")}, "when and why; null: it stands", default=None
        ),
        "handed": many(
            record(
                together(
                    HANDED_LINE["fields"],
                    {
                        "at_ms": stream_fold.AT,
                        "by": stream_fold.BY["by"],
                        "event_id": text(80, "the event that said so"),
                        "nth": integer(0, 20000, "of the hand-overs written down"),
                    },
                ),
                "what was handed over",
            ),
            0,
            20000,
            "what was handed over",
            default=[],
        ),
        "pinned_ms": PINNED_MS,
        "handovers": integer(0, 20000, "how often", default=0),
        "state": choice(STATES, "how far it is", default="open"),
        "differences": many(DIFFERENCE, 0, 200, "what does not add up", default=[]),
    },
)
DOCUMENT["lines"] = many(LINE, 0, MOST_LINES, "what is wanted", default=[])
OPEN_LINE = record(
    together(
        WHAT,
        {
            "handed": number("", 0, 1e12, "how many, or how much (kg), was handed over"),
            "packed": number("", 0, 1e12, "how many boxes in hand are for it"),
            "missing": number("", 0, 1e12, "how many, or how much (kg), is still to be packed"),
        },
    ),
    "a line of an open order",
)
TODAY_MS = number("ms", 0, 1e14, "the midnight with which today began")
FUNCTIONS = {
    "order.fold": stream_fold.of_fold("Order"),
    "order.check": {
        "request": together(
            CHECK,
            {
                "today_ms": TODAY_MS,
                "order": record(DOCUMENT, "the order; null: a new one", default=None),
                "boxes": many(stream_fold.ID, 0, 5000, "those of the shop", default=[]),
                "products": many(stream_fold.ID, 0, 5000, "those of the shop", default=[]),
            },
        ),
        "reply": CHECKED,
    },
    "orders.overview": {
        "request": {
            "orders": many(record(DOCUMENT, "an order"), 0, 20000, "orders"),
            "packs": many(record(PACK, "boxes packed"), 0, 20000, "what was packed", default=[]),
            "now_ms": number("ms", 0, 1e14, "corrected time now"),
            "today": CHECK["today"],
            "today_ms": TODAY_MS,
        },
        "reply": {
            "orders": many(
                record(
                    {
                        "order_id": stream_fold.ID,
                        "is_late": boolean("whether it was wanted before now"),
                        "lines": many(OPEN_LINE, 0, MOST_LINES, "what of it is wanted, packed and handed over"),
                        "is_packed": boolean("whether all of it is in hand"),
                    },
                    "an open order",
                ),
                0,
                20000,
                "open ones, those wanted first in front; what stands on the counter last",
            ),
            "boxes": many(
                record(
                    {
                        "box_id": stream_fold.ID,
                        "wanted": integer(0, 10**12, "how many open orders want"),
                        "in_hand": integer(
                            -(10**12), 10**12, "how many are packed, not handed over and not past their best-by"
                        ),
                        "missing": integer(0, 10**12, "how many are to be packed"),
                    },
                    "a box",
                ),
                0,
                5000,
                "boxes that are wanted or in hand",
            ),
            "packs": many(
                record(
                    {
                        "pack_id": stream_fold.ID,
                        "left": integer(-(10**12), 10**12, "how many are in hand; below zero: a difference"),
                    },
                    "boxes packed",
                ),
                0,
                40000,
                "those in hand, oldest first, and those that do not add up",
            ),
            "differing": many(stream_fold.ID, 0, 20000, "orders that do not add up"),
        },
    },
}
